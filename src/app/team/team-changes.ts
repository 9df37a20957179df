/** What a change of a team's settings has changed, as its channel hears of it: every setting that is another, and nothing else. */
import { THRESHOLD_NAMES, type ThresholdName } from '../../sprint/thresholds.ts';
import { SETTING_NAMES, SETTINGS, type Setting, type SettingName } from './settings.ts';
import { activeMembers, type Member, type Team } from './team.ts';

/**
 * Values are texts: people by their ids, weekdays by their numbers, both parted by spaces; a threshold as a share; a setting
 * as it is typed. Empty: none.
 */
export type TeamChange =
  | {
      readonly part:
        | 'name'
        | 'timeZone'
        | 'promptAt'
        | 'workingDays'
        | 'facilitators'
        | 'productOwner'
        | SettingName
        | ThresholdName;
      readonly was: string;
      readonly became: string;
    }
  /** How many they are, and who is new. Who is a member no more is theirs to say. */
  | { readonly part: 'members'; readonly was: number; readonly became: number; readonly joined: string };

export interface TeamAndPeople {
  readonly team: Team;
  readonly people: readonly Member[];
}

/** What a setting is before and after; in the order in which the forms have them. */
export function teamChanges(before: TeamAndPeople, after: TeamAndPeople): TeamChange[] {
  const changes: TeamChange[] = [];
  const compare = (part: Exclude<TeamChange['part'], 'members'>, of: (one: TeamAndPeople) => string) => {
    const [was, became] = [of(before), of(after)];
    if (was !== became) changes.push({ part, was, became });
  };
  compare('name', ({ team }) => team.name);
  const [were, are] = [membersIn(before), membersIn(after)];
  const joined = are.filter((userId) => !were.includes(userId));
  if (joined.length > 0 || are.length !== were.length) {
    changes.push({ part: 'members', was: were.length, became: are.length, joined: joined.join(' ') });
  }
  compare('facilitators', facilitatorsIn);
  compare('productOwner', ({ team }) => team.productOwnerId ?? '');
  compare('timeZone', ({ team }) => team.timeZone);
  compare('promptAt', ({ team }) => team.promptAt);
  compare('workingDays', ({ team }) => team.workingDays.join(' '));
  for (const name of SETTING_NAMES) {
    const { typed } = SETTINGS[name] as unknown as Setting<Team[SettingName]>;
    compare(name, ({ team }) => typed(team[name]));
  }
  for (const name of THRESHOLD_NAMES) compare(name, ({ team }) => String(team.thresholds[name] ?? ''));
  return changes;
}

function membersIn({ people }: TeamAndPeople): string[] {
  return activeMembers(people).map(({ userId }) => userId);
}

function facilitatorsIn({ people }: TeamAndPeople): string {
  const leading = people.filter(({ isActive, isFacilitator }) => isActive && isFacilitator);
  return leading
    .map(({ userId }) => userId)
    .sort()
    .join(' ');
}

/** As a post keeps them. */
export function writtenChanges(changes: readonly TeamChange[]): string {
  return JSON.stringify(changes);
}

/** None, once the person who made them was erased. */
export function readChanges(written: string): readonly TeamChange[] {
  return written === '' ? [] : (JSON.parse(written) as readonly TeamChange[]);
}
