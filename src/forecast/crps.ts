import type { WeightedPoints } from './weighted-points.ts';

/**
 * Continuous ranked probability score: how far a whole distribution was from what came. 0 is best; for a forecast
 * that is a single amount it is the absolute error.
 *
 * Formula: E|X − y| − ½·E|X − X′|, with X and X′ independent draws from the distribution and y the outcome.
 * Units: points. Always defined.
 * How it misleads: it grows with the size of the work, so scores of small and of large sprints can't be compared.
 * Source: Gneiting and Raftery, "Strictly proper scoring rules, prediction, and estimation", 2007.
 *
 * @example crps(weightedPoints([1, 3], [1, 1]), 2) === 0.5
 */
export function crps({ points, chances }: WeightedPoints, outcomePoints: number): number {
  let distance = 0;
  let spread = 0;
  let before = 0;
  for (let i = 0; i < points.length; i += 1) {
    const value = points[i] as number;
    const chance = chances[i] as number;
    distance += chance * Math.abs(value - outcomePoints);
    // ½·E|X − X′| = Σ p·x·(chance below − chance above).
    spread += chance * value * (2 * before + chance - 1);
    before += chance;
  }
  return Math.max(0, distance - spread);
}
