/**
 * Keeps the promise of an interval: one that is said to hold the truth in four sprints of five must do so on the
 * sprints that come. It learns how far outside the distributions of the past the outcomes really fell, and corrects
 * itself after each sprint. It never changes the distribution, only how much of it an interval takes in.
 */
import { conformalRank } from './conformal-rank.ts';
import type { Interval } from './interval.ts';
import type { WeightedPoints } from './weighted-points.ts';

/** How often the narrow and the wide interval should hold the truth. */
export const NARROW = 0.5;
export const WIDE = 0.8;

/**
 * How much one sprint moves the level. As long as intervals can grow and shrink, the share of hits in a row of n
 * sprints then differs from the promise by at most (1 + step) ÷ (step·n): 8 % after 250 sprints at the very worst,
 * below 1 % on real ones. A larger step keeps the promise sooner but makes intervals jump.
 */
const STEP = 0.05;
/** Scores of so many sprints are remembered; older ones may be of another team in all but name. */
const MOST_SCORES = 200;

export interface CoverageKeeper {
  /** The latest scores (see `depthOf`), oldest first. */
  readonly scores: readonly number[];
  /** The levels asked of the scores now, which began as the promises. */
  readonly narrowLevel: number;
  readonly wideLevel: number;
}

export const NEW_KEEPER: CoverageKeeper = { scores: [], narrowLevel: NARROW, wideLevel: WIDE };

/** The two intervals around the median. */
export interface Intervals {
  readonly narrow: Interval;
  readonly wide: Interval;
}

/**
 * How much of the distribution, around its median, an interval must take in to hold the outcome: 0 at the median,
 * 1 at or beyond its ends. An amount with a chance of its own counts from its inner side.
 *
 * Formula: max(0, 2·P(X < y) − 1, 1 − 2·P(X ≤ y)).
 *
 * @example depthOf(weightedPoints([1, 2, 3, 4], [1, 1, 1, 1]), 4) === 0.5
 */
export function depthOf(distribution: WeightedPoints, outcomePoints: number): number {
  const atMost = distribution.cdf(outcomePoints);
  const at = distribution.points.indexOf(outcomePoints);
  const below = at < 0 ? atMost : atMost - (distribution.chances[at] as number);
  return Math.max(0, 2 * below - 1, 1 - 2 * atMost);
}

/** The intervals of a distribution under what the keeper has learnt; the wide one holds the narrow one. */
export function intervalsOf(keeper: CoverageKeeper, distribution: WeightedPoints): Intervals {
  const sorted = Float64Array.from(keeper.scores).sort();
  const narrow = depthAt(sorted, keeper.narrowLevel);
  const wide = Math.max(narrow, depthAt(sorted, keeper.wideLevel));
  const around = (depth: number): Interval => ({
    low: distribution.quantile((1 - depth) / 2),
    high: distribution.quantile((1 + depth) / 2),
  });
  return { narrow: around(narrow), wide: around(wide) };
}

function depthAt(sorted: Float64Array, level: number): number {
  const rank = conformalRank(sorted.length, level);
  if (rank < 1) return 0;
  return rank > sorted.length ? 1 : (sorted[rank - 1] as number);
}

/**
 * The keeper after an outcome: after a miss it asks for more, after a hit for a little less. The level stops just
 * beyond 0 and 1, where an interval can't shrink or grow any more, so that it comes back at once when it can.
 * Source of the rule: Gibbs and Candès, "Adaptive conformal inference under distribution shift", 2021.
 */
export function withOutcome(
  keeper: CoverageKeeper,
  { distribution, narrow, wide }: Intervals & { readonly distribution: WeightedPoints },
  outcomePoints: number,
): CoverageKeeper {
  const moved = (level: number, promise: number, { low, high }: Interval): number => {
    const held = low <= outcomePoints && outcomePoints <= high;
    return Math.min(1 + STEP, Math.max(-STEP, level + STEP * (promise - (held ? 1 : 0))));
  };
  return {
    scores: [...keeper.scores, depthOf(distribution, outcomePoints)].slice(-MOST_SCORES),
    narrowLevel: moved(keeper.narrowLevel, NARROW, narrow),
    wideLevel: moved(keeper.wideLevel, WIDE, wide),
  };
}
