/** Whether chances come true: of the sprints that were told about 30%, about 30% should have been kept. */
import { chanceOfAtLeast } from '../../src/forecast/load-signal.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import { committedPoints } from './moments.ts';
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
 * the moment; the files don't say how large the cards were, so that any points count. Sprints that have finished as much already are left out: nothing is foretold there.
 */
export function scoreChances(cases: readonly Foretold[]): ChanceBin[] {
  const open = cases
    .map(({ row, projection }) => ({
      row,
      projection,
      floorPoints: DEFAULT_THRESHOLDS.keptShareAtLeast * committedPoints(row),
    }))
    .filter(({ row, floorPoints }) => row.donePoints < floorPoints)
    .map(({ row, projection, floorPoints }) => ({
      told: chanceOfAtLeast(projection.distribution, floorPoints),
      came: row.deliveredPoints >= floorPoints,
    }));
  return binsOf(open);
}

/** By what was told, lowest first; bins without a case are left out. */
export function binsOf(cases: readonly { readonly told: number; readonly came: boolean }[]): ChanceBin[] {
  const bins = Map.groupBy(cases, ({ told }) => Math.min(BINS - 1, Math.floor(told * BINS)));
  return [...bins]
    .sort(([a], [b]) => a - b)
    .map(([, bin]) => ({
      told: meanOf(bin, ({ told }) => told),
      came: meanOf(bin, ({ came }) => (came ? 1 : 0)),
      cases: bin.length,
    }));
}
