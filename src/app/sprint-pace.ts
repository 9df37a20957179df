/** The mid-sprint reading of a sprint, from its ledger. */
import { paceOf } from '../forecast/pace.ts';
import type { Day } from '../sprint/calendar.ts';
import type { CardState } from '../sprint/ledger.ts';
import { sprintTotals } from '../sprint/totals.ts';
import type { PaceReading } from './message-content.ts';
import { promptDays } from './sprint-clock.ts';
import type { Sprint, Team } from './team.ts';

/** How many working days the sprint has, and how many of them come after today. */
export function workingDaysOf(
  team: Team,
  sprint: Sprint,
  today: Day,
): { total: number; left: number; gone: number } {
  const days = promptDays(team, sprint);
  const left = days.filter((day) => day > today).length;
  return { total: days.length, left, gone: days.length - left };
}

/** Days before today count as gone; today does once somebody has answered for it. */
export function paceReading(
  team: Team,
  sprint: Sprint,
  states: readonly CardState[],
  today: Day,
): PaceReading {
  const days = promptDays(team, sprint);
  const answeredToday = states.some(({ entries }) => entries.some(({ answer }) => answer.day === today));
  const isGone = (day: Day): boolean => day < today || (day === today && answeredToday);
  const workingDaysGone = days.filter(isGone).length;
  const totals = sprintTotals(states, team.scale);
  const pace = paceOf({ ...totals, workingDaysGone, workingDaysLeft: days.length - workingDaysGone });
  return pace.signal === undefined
    ? { signal: undefined, noSignalBecause: pace.because, projectedLeftPoints: undefined }
    : { signal: pace.signal, noSignalBecause: undefined, projectedLeftPoints: pace.projectedLeftPoints };
}
