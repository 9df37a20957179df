/** Takes the weekdays on which a member works, where these are fewer than the team's. */
import type { Weekday } from '../../sprint/calendar.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { Refusal } from '../refusal.ts';
import { membershipAt, membershipInTeam, type Place } from '../team/place.ts';
import type { Actor, Team } from '../team/team.ts';
import { readWeekdays } from './read-days-off.ts';

export interface WeekdaysSaid {
  readonly team: Team;
  /** Undefined: all of the team's. */
  readonly worksOn: readonly Weekday[] | undefined;
}

/** @throws Refusal `bad-argument`, `no-work-to-be-off`, and those of finding the team. */
export async function sayWeekdays(
  deps: AppDependencies,
  actor: Actor,
  { place, words }: { readonly place: Place; readonly words: string },
): Promise<WeekdaysSaid> {
  const read = readWeekdays(words);
  return deps.store.transaction(async (tx) => {
    const found = await membershipAt(tx.read, actor, place);
    await tx.lock.team(found.team.id);
    const { team, member } = await membershipInTeam(tx.read, actor, found.team.id);
    if (!member.isMember) throw new Refusal('no-work-to-be-off', {});
    const isOfTeam =
      read !== undefined && (read === 'team' || read.some((day) => team.workingDays.includes(day)));
    if (!isOfTeam) {
      const problem = { code: 'not-weekdays' } as const;
      throw new Refusal('bad-argument', { command: 'works', problem, example: 'mon-thu' });
    }
    const worksOn = read === 'team' ? undefined : read;
    await tx.write.teams.saveMembers(team.id, [{ ...member, worksOn }]);
    return { team, worksOn };
  });
}
