/** How much of a sprint's working time is over. Knows nothing of its work. */
import type { Day } from '../../sprint/calendar.ts';
import type { Sprint, Team } from '../team/team.ts';
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
  /** gone ÷ total, 0 to 1; 1 for a sprint without a working day. */
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

/** @param isTodayOver whether today counts among the days over, as `isDayOver` says */
export function sprintTime(
  team: Pick<Team, 'timeZone' | 'workingDays' | 'daysOff'>,
  sprint: Pick<Sprint, 'startsOn' | 'endsOn'>,
  today: Day,
  isTodayOver: boolean,
): SprintTime {
  const days = sprintDays(team, sprint);
  const gone = days.filter((day) => day < today || (day === today && isTodayOver)).length;
  return {
    total: days.length,
    gone,
    left: days.filter((day) => day > today).length,
    leftWithToday: days.filter((day) => day >= today).length,
    elapsedShare: days.length === 0 ? 1 : gone / days.length,
  };
}
