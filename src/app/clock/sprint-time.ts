/** How much of a sprint's working time is over. Knows nothing of its work. */
import type { Day } from '../../sprint/calendar.ts';
import { memberDaysOf } from '../../sprint/work-calendar.ts';
import { datedWorkersOf, type Member, type Sprint, type Team } from '../team/team.ts';
import { daysOnlyNamed, memberDaysIn } from './member-days.ts';
import { sprintDays } from './sprint-clock.ts';

/** Working days. */
export interface SprintTime {
  readonly total: number;
  /** Those over: the days before today, and today once enough was said of it. */
  readonly gone: number;
  /** Those after today. */
  readonly left: number;
  /** Those still to be worked on, today included. */
  readonly leftWithToday: number;
  /** Those not over, each counted by how many of the team are there, beside the days that are over. */
  readonly evenDaysLeft: number;
  /** All, and those not over, of all members together, without days off. */
  readonly memberDays: number;
  readonly memberDaysLeft: number;
  /** Days off and away that the plan names and nobody recorded: every day loses its share of them. */
  readonly onlyNamedDays: number;
  /** Which part of the members' working time is over, 0 to 1; 1 for a sprint without a working day. */
  readonly elapsedShare: number;
}

/**
 * Today is over once half of those asked have met its prompt: before that, comparing with the evenings of other sprints
 * would make the team look late.
 */
export function isDayOver({
  asked,
  answered,
}: {
  readonly asked: number;
  readonly answered: number;
}): boolean {
  return answered > 0 && 2 * answered >= asked;
}

/**
 * @param people of the team; days off and part-time of those who work in the sprint count, as far as they are known today
 * @param isTodayOver whether today counts among the days over, as `isDayOver` says
 */
export function sprintTime(
  team: Pick<Team, 'timeZone' | 'workingDays' | 'daysOff'>,
  sprint: Pick<Sprint, 'id' | 'startsOn' | 'endsOn' | 'awayDays'>,
  people: readonly Member[],
  today: Day,
  isTodayOver: boolean,
): SprintTime {
  const days = sprintDays(team, sprint);
  const isOver = (day: Day): boolean => day < today || (day === today && isTodayOver);
  const gone = days.filter(isOver).length;
  const workers = datedWorkersOf(people, sprint.id);
  const timeOver = memberDaysOf(team, workers, days.filter(isOver));
  const daysLeft = days.filter((day) => !isOver(day));
  const timeLeft = memberDaysOf(team, workers, daysLeft);
  // Nobody was there yet, or nobody is known: then each day counts the same.
  const evenDaysLeft = timeOver === 0 ? days.length - gone : (gone * timeLeft) / timeOver;
  return {
    total: days.length,
    gone,
    evenDaysLeft,
    memberDays: memberDaysIn(team, sprint, workers, days),
    memberDaysLeft: memberDaysIn(team, sprint, workers, daysLeft),
    onlyNamedDays: daysOnlyNamed(team, sprint, workers),
    left: days.filter((day) => day > today).length,
    leftWithToday: days.filter((day) => day >= today).length,
    elapsedShare: days.length === 0 ? 1 : (shareOver(timeOver, timeLeft) ?? gone / days.length),
  };
}

function shareOver(over: number, left: number): number | undefined {
  return over + left === 0 ? undefined : over / (over + left);
}
