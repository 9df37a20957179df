/**
 * Keeps the promise of an interval: one that is said to hold the truth in four sprints of five must do so on the
 * sprints that come. It learns how far outside the distributions of the past the outcomes really fell, and corrects
 * itself after each sprint. It never changes the distribution, only how much of it an interval takes in.
 */
import type { Interval } from './points-distribution.ts';
import type { OutcomePlace } from './told-chances.ts';
import type { WeightedPoints } from './weighted-points.ts';

/** How often the narrow and the wide interval should hold the truth. */
export const NARROW = 0.5;
export const WIDE = 0.8;

/**
 * How much one sprint moves the level: much at first, for a team alone has few scores before its ways change, and less
 * the more there are. As long as intervals can grow and shrink, the share of hits in a row of n sprints at one step
 * differs from the promise by at most (1 + step) ÷ (step·n): a larger step keeps the promise sooner but makes intervals
 * jump. Source of steps that fall: Angelopoulos, Barber and Bates, "Online conformal prediction with decaying step sizes",
 * 2024 (memory); the numbers are ours.
 */
function stepAfter(scores: number): number {
  return Math.min(FIRST_STEP, Math.max(LAST_STEP, STEPS_TOGETHER / (scores + 1)));
}
const FIRST_STEP = 0.2;
/** Reached after 80 scores. */
const LAST_STEP = 0.05;
const STEPS_TOGETHER = 4;
/** Scores of so many sprints are remembered; older ones may be of another team in all but name. */
const MOST_SCORES = 200;

/** With fewer scores than this no wide interval can be promised, and it spans all that is possible. */
export const LEAST_SCORES = 4;

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

/** Against rounding, as in the distribution's own quantiles. */
const SLACK = 1e-12;

/**
 * How much of the distribution, around its median, an interval must take in to hold the outcome: 0 at the median,
 * 1 at or beyond its ends. An amount with a chance of its own counts from its inner side.
 *
 * Formula: max(0, 2·P(X < y) − 1, 1 − 2·P(X ≤ y)).
 *
 * @example depthOf({ lessChance: 0.75, atMostChance: 1 }) === 0.5
 */
export function depthOf({ lessChance, atMostChance }: OutcomePlace): number {
  return Math.max(0, 2 * lessChance - 1, 1 - 2 * atMostChance);
}

/** Whether the interval that takes in so much around the median holds the outcome. None goes on beyond the ends. */
function isHeldAt(depth: number, { lessChance, atMostChance }: OutcomePlace): boolean {
  const isFromLow = atMostChance > 0 && atMostChance >= (1 - depth) / 2 - SLACK;
  return isFromLow && lessChance < (1 + depth) / 2 - SLACK;
}

/** How much of a distribution, around its median, each interval takes in. */
export interface Depths {
  readonly narrow: number;
  readonly wide: number;
}

/** The depths of both intervals under what the keeper has learnt; the wide one is no less than the narrow one. */
export function depthsOf({ scores, narrowLevel, wideLevel }: CoverageKeeper): Depths {
  const sorted = Float64Array.from(scores).sort();
  const narrow = depthAt(sorted, narrowLevel);
  return { narrow, wide: Math.max(narrow, depthAt(sorted, wideLevel)) };
}

/** Between two ranks the depth is interpolated: a whole rank would hold more often than promised where scores are few. */
function depthAt(sorted: Float64Array, level: number): number {
  const rank = conformalRank(sorted.length, level);
  if (rank > sorted.length) return 1;
  if (rank <= 0) return 0;
  const lower = Math.floor(rank);
  const at = (which: number): number => (which === 0 ? 0 : (sorted[which - 1] as number));
  return lower === rank ? at(lower) : at(lower) + (rank - lower) * (at(lower + 1) - at(lower));
}

/** The intervals of a distribution under what the keeper has learnt; the wide one holds the narrow one. */
export function intervalsOf(keeper: CoverageKeeper, distribution: WeightedPoints): Intervals {
  const { narrow, wide } = depthsOf(keeper);
  const around = (depth: number): Interval => ({
    low: distribution.quantile((1 - depth) / 2),
    high: distribution.quantile((1 + depth) / 2),
  });
  return { narrow: around(narrow), wide: around(wide) };
}

/**
 * The keeper after an outcome: after a miss of an interval it asks for more, after a hit for a little less. The level
 * stops just beyond 0 and 1, where an interval can't shrink or grow any more, so that it comes back at once when it can.
 * Source of the rule: Gibbs and Candès, "Adaptive conformal inference under distribution shift", 2021.
 *
 * @param depths of the intervals that had forecast it
 */
export function withOutcome(
  keeper: CoverageKeeper,
  { narrow, wide }: Depths,
  place: OutcomePlace,
): CoverageKeeper {
  const step = stepAfter(keeper.scores.length);
  const moved = (level: number, promise: number, depth: number): number =>
    Math.min(1 + step, Math.max(-step, level + step * (promise - (isHeldAt(depth, place) ? 1 : 0))));
  return {
    scores: [...keeper.scores, depthOf(place)].slice(-MOST_SCORES),
    narrowLevel: moved(keeper.narrowLevel, NARROW, narrow),
    wideLevel: moved(keeper.wideLevel, WIDE, wide),
  };
}

/** Against rounding: (9 + 1)·(1 − 0.7) is a hair above 3 in binary, and still means the third. */
const RANK_SLACK = 1e-9;

/**
 * Which of n past scores, counted from the smallest, a new one does not exceed with the wanted chance, if all of
 * them come in no particular order.
 *
 * Formula: (n + 1)·chance. Units: a rank from 1, which may lie between two scores. Above n it says that n scores are
 * too few for such a promise.
 * How it misleads: sprints of a team that changes do come in a particular order. Rounded up it is never too low;
 * between two scores it is right on average only.
 * Source: split conformal prediction; Vovk, Gammerman and Shafer, "Algorithmic learning in a random world", 2005.
 *
 * @example conformalRank(19, 0.9) === 18
 */
export function conformalRank(scores: number, chance: number): number {
  const rank = (scores + 1) * chance;
  const whole = Math.round(rank);
  return Math.abs(rank - whole) < RANK_SLACK ? whole : rank;
}
