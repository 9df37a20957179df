/** A distribution made of amounts with weights: what a forecast from past cases comes to. */
import type { PointsDistribution } from './points-distribution.ts';

export interface WeightedPoints extends PointsDistribution {
  /** The possible amounts in ascending order, each once. */
  readonly points: Float64Array;
  /** The chance of each; together 1. */
  readonly chances: Float64Array;
  readonly meanPoints: number;
}

/** Against rounding: a chance that is reached by design must not be missed in the last digit. */
const SLACK = 1e-12;

/**
 * The distribution that gives each amount its share of the total weight. Equal amounts count as one.
 *
 * Formula: P(X = x) = Σ weights at x ÷ Σ weights. The quantile at p is the least amount that is not exceeded with
 * a chance of p (type 1 of Hyndman and Fan, 1996), so it is always an amount that can happen.
 * Units: points; weights have none. Not defined without weight: throws.
 *
 * @throws RangeError when no weight is above 0, or the lists differ in length.
 * @example weightedPoints([1, 2, 3, 4], [1, 1, 1, 1]).quantile(0.25) === 1
 */
export function weightedPoints(values: ArrayLike<number>, weights: ArrayLike<number>): WeightedPoints {
  if (values.length !== weights.length) throw new RangeError('Each amount needs one weight.');
  // Gathered before they are sorted: many sprints end with the same few amounts.
  const masses = new Map<number, number>();
  let total = 0;
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i] as number;
    const weight = weights[i] as number;
    if (!(weight > 0)) continue;
    masses.set(value, (masses.get(value) ?? 0) + weight);
    total += weight;
  }
  if (total === 0) throw new RangeError('A distribution needs some weight.');
  const points = Float64Array.from(masses.keys()).sort();
  return withChances(
    points,
    points.map((value) => (masses.get(value) as number) / total),
  );
}

/**
 * @param points ascending, each once
 * @param chances of each; together 1
 */
export function withChances(points: Float64Array, chances: Float64Array): WeightedPoints {
  let reached = 0;
  const upTo = chances.map((chance) => {
    reached += chance;
    return reached;
  });
  upTo[upTo.length - 1] = 1;
  return {
    points,
    chances,
    meanPoints: points.reduce((sum, value, i) => sum + value * (chances[i] as number), 0),
    cdf: (amount) => {
      const above = firstIndex(points, (value) => value > amount);
      return above === 0 ? 0 : (upTo[above - 1] as number);
    },
    quantile: (chance) => points[firstIndex(upTo, (sum) => sum >= chance - SLACK)] as number,
  };
}

/** Index of the first value that passes, in a list where all after it pass as well; its length if none does. */
function firstIndex(sorted: Float64Array, passes: (value: number) => boolean): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (passes(sorted[middle] as number)) high = middle;
    else low = middle + 1;
  }
  return low;
}
