/**
 * What a forecast knows about an amount of points: a distribution, seen from both sides. Any forecast that
 * offers these two functions can be plugged in where one is asked for.
 */
export interface PointsDistribution {
  /** The chance that the amount is at most so many points. Rises from 0 to 1. */
  readonly cdf: (points: number) => number;
  /** The least amount that is not exceeded with this chance (0 to 1). Never below 0 points. */
  readonly quantile: (chance: number) => number;
}

/** A lower and an upper end. What it holds, and how surely, is for the function that returns it to say. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}
