/**
 * Which closed sprint growth is measured by, and how the others grew against it. Pure; the store's
 * `baselineVelocityPoints` follows the same rule.
 */

import { type Growth, type ValuedSprint, valueGrowth } from '../../forecast/value-growth.ts';
import { undefinedBecause } from '../../sprint/undefined-value.ts';
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

export interface GrowthOfPast {
  /** The sprint that both growths are measured by; undefined when there is none. */
  readonly measuredBy: PastSprint | undefined;
  /** One for each sprint given. */
  readonly growth: readonly Growth[];
}

const UNKNOWN = undefinedBecause('velocity-unknown');
const NO_VELOCITY: Growth = {
  valueGrowth: UNKNOWN,
  velocityGrowth: UNKNOWN,
  valuePerPointGrowth: UNKNOWN,
};

/** @param past oldest first */
export function growthOfPast(
  team: Pick<Team, 'baselineSprintId'>,
  past: readonly PastSprint[],
): GrowthOfPast {
  const known = past.filter(
    (sprint): sprint is PastSprint & ValuedSprint => sprint.velocityPoints !== undefined,
  );
  const first = baselineIndex(team, known);
  const history = valueGrowth(known, first ?? 0);
  const growthOf = new Map(known.map(({ sprintId }, i) => [sprintId, history.sprints[i]]));
  const measuredBy = history.baselineIndex === undefined ? undefined : known[history.baselineIndex];
  return { measuredBy, growth: past.map(({ sprintId }) => growthOf.get(sprintId) ?? NO_VELOCITY) };
}
