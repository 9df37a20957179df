/**
 * Working days of all members together in a sprint, less the days off and away that its plan names. Those it names hold what
 * people record as well, so that no day counts twice.
 */
import type { Day } from '../../sprint/calendar.ts';
import { memberDaysOf, NO_DAYS_OFF } from '../../sprint/work-calendar.ts';
import type { Member, Sprint, Team } from '../team/team.ts';
import { sprintDays } from './sprint-clock.ts';

type Calendar = Pick<Team, 'timeZone' | 'workingDays' | 'daysOff'>;
type PlannedSpan = Pick<Sprint, 'startsOn' | 'endsOn' | 'awayDays'>;
type IsAway = (member: Member, day: Day) => boolean;

/** Days off and away of all members together that the plan names and nobody recorded. */
export function daysOnlyNamed(
  team: Calendar,
  sprint: PlannedSpan,
  workers: readonly Member[],
  isAway?: IsAway,
): number {
  const { awayDays = 0 } = sprint;
  if (awayDays === 0) return 0;
  const always = { ...team, daysOff: NO_DAYS_OFF };
  const allThere = workers.map((member) => ({ ...member, daysOff: NO_DAYS_OFF }));
  const usual = memberDaysOf(always, allThere, sprintDays(always, sprint));
  const known = memberDaysOf(team, workers, sprintDays(team, sprint), isAway);
  return Math.min(known, Math.max(0, awayDays - (usual - known)));
}

/**
 * Of some of the sprint's days. Nobody knows on which ones those fall that are only named: each day loses the same share.
 *
 * @param isAway whether a member said on the day that they were away
 * @returns whole and half days
 */
export function memberDaysIn(
  team: Calendar,
  sprint: PlannedSpan,
  workers: readonly Member[],
  days: readonly Day[],
  isAway?: IsAway,
): number {
  const known = memberDaysOf(team, workers, days, isAway);
  const onlyNamed = daysOnlyNamed(team, sprint, workers, isAway);
  if (onlyNamed === 0) return known;
  const whole = memberDaysOf(team, workers, sprintDays(team, sprint), isAway);
  return Math.round(known * (1 - onlyNamed / whole) * 2) / 2;
}
