/** Whether chances come true: of the sprints that were told about 30%, about 30% should have been kept. */
import { chanceOfAtLeast } from '../../src/forecast/load-signal.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import { committedPoints } from './moments.ts';
import { type PlanningOf, statusAmount } from './score-first-days.ts';
import { type Foretold, meanOf } from './walk-forward.ts';

/** The cases that were told about the same chance; shares of 1. */
export interface ChanceBin {
  readonly told: number;
  readonly came: number;
  readonly cases: number;
}

const BINS = 10;

/**
 * Bins of ten percentage points, those with a case, lowest first.
 *
 * A sprint counts as kept when what it delivered is at least the floor of the kept share (80%) of what was committed at
 * the moment; the files don't say how large the cards were, so that any points count. Sprints that have finished as much
 * already are left out: nothing is foretold there.
 *
 * @param planning what was known when each was planned, which still speaks in its first days
 */
export function scoreChances(cases: readonly Foretold[], planning: PlanningOf): ChanceBin[] {
  return binsOf(toldChancesToKeep(cases, planning));
}

/** What was told of each case that is open, and whether it came true. */
export function toldChancesToKeep(cases: readonly Foretold[], planning: PlanningOf): ToldChance[] {
  return cases.flatMap((one) => {
    const { row } = one;
    const floorPoints = DEFAULT_THRESHOLDS.keptShareAtLeast * committedPoints(row);
    if (row.donePoints >= floorPoints) return [];
    const told = chanceOfAtLeast(statusAmount(one, planning), floorPoints);
    return [{ told, came: row.deliveredPoints >= floorPoints }];
  });
}

export interface ToldChance {
  readonly told: number;
  readonly came: boolean;
}

/** By what was told, lowest first; bins without a case are left out. */
export function binsOf(cases: readonly ToldChance[]): ChanceBin[] {
  const bins = Map.groupBy(cases, ({ told }) => Math.min(BINS - 1, Math.floor(told * BINS)));
  return [...bins]
    .sort(([a], [b]) => a - b)
    .map(([, bin]) => ({
      told: meanOf(bin, ({ told }) => told),
      came: meanOf(bin, ({ came }) => (came ? 1 : 0)),
      cases: bin.length,
    }));
}
