/** Which closed sprint growth is measured by. Pure; the store's `baselineVelocityPoints` follows the same rule. */

import type { Team } from '../team/team.ts';
import type { PastSprint } from './past-sprint.ts';

type Measured = Pick<PastSprint, 'sprintId' | 'velocityPoints'>;

/** Whether something can be measured by the sprint: points were finished in it, and it is known how many. */
export function canBeBaseline({ velocityPoints }: Pick<PastSprint, 'velocityPoints'>): boolean {
  return velocityPoints !== undefined && velocityPoints > 0;
}

/**
 * The place in the list of the sprint that the team named, else of the first one with a velocity above 0; undefined
 * when there is none.
 *
 * @param past oldest first
 */
export function baselineIndex(
  { baselineSprintId }: Pick<Team, 'baselineSprintId'>,
  past: readonly Measured[],
): number | undefined {
  const named = past.findIndex((sprint) => sprint.sprintId === baselineSprintId && canBeBaseline(sprint));
  const found = named >= 0 ? named : past.findIndex(canBeBaseline);
  return found >= 0 ? found : undefined;
}
