/** Takes the weekdays on which a member works, where these are fewer than the team's. */
import type { Weekday } from '../../sprint/calendar.ts';
import { withWeekdays } from '../../sprint/work-calendar.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { Refusal } from '../refusal.ts';
import { membershipAt, membershipInTeam, type Place, todayOf } from '../team/place.ts';
import { type Actor, isWorking, type Team } from '../team/team.ts';
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
    const { team } = await membershipAt(tx.read, actor, place);
    const said = read && (await saveWeekdays(tx, actor, team.id, read, deps.clock.now()));
    if (said) return said;
    const problem = { code: 'not-weekdays' } as const;
    throw new Refusal('bad-argument', { command: 'works', problem, example: 'mon-thu' });
  });
}

/**
 * Saves on which weekdays the actor works from today on. All of the team's are kept as the team's, so that they follow a change of these.
 * Undefined: none of them is one of the team's, and nothing was saved.
 *
 * @throws Refusal `no-work-to-be-off`, and those of finding the team.
 */
export async function saveWeekdays(
  tx: Transaction,
  actor: Actor,
  teamId: string,
  weekdays: readonly Weekday[] | 'team',
  now: Date,
): Promise<WeekdaysSaid | undefined> {
  await tx.lock.team(teamId);
  const { team, member } = await membershipInTeam(tx.read, actor, teamId);
  if (!isWorking(member)) throw new Refusal('no-work-to-be-off', {});
  const isNone = weekdays !== 'team' && !weekdays.some((day) => team.workingDays.includes(day));
  if (isNone) return undefined;
  const isAll = weekdays === 'team' || team.workingDays.every((day) => weekdays.includes(day));
  const worksOn = isAll ? undefined : [...weekdays].sort((a, b) => a - b);
  await tx.write.teams.saveMembers(team.id, [withWeekdays(member, worksOn, todayOf(team, now))]);
  return { team, worksOn };
}
