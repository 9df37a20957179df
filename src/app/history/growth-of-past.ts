/** How closed sprints grew, in recorded value beside velocity. Pure. */
import { type Growth, type ValuedSprint, valueGrowth } from '../../forecast/value-growth.ts';
import { undefinedBecause } from '../../sprint/undefined-value.ts';
import type { Team } from '../team/team.ts';
import { baselineOfPast } from './baseline-of.ts';
import type { PastSprint } from './past-sprint.ts';

interface GrowthOfPast {
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
  team: Pick<Team, 'baselineSprintId' | 'baselineRule'>,
  past: readonly PastSprint[],
): GrowthOfPast {
  const known = past.filter(
    (sprint): sprint is PastSprint & ValuedSprint => sprint.velocityPoints !== undefined,
  );
  const history = valueGrowth(known, baselineOfPast(team, known)?.from);
  const growthOf = new Map(known.map(({ sprintId }, i) => [sprintId, history.sprints[i]]));
  const measuredBy = history.baselineIndex === undefined ? undefined : known[history.baselineIndex];
  return { measuredBy, growth: past.map(({ sprintId }) => growthOf.get(sprintId) ?? NO_VELOCITY) };
}
