/** A weighted average of amounts whose square roots are normal. Where the weights come from is not its business. */
import { normalCdf } from './normal-distribution.ts';
import type { PointsDistribution } from './points-distribution.ts';

/** In natural logarithms: what lies further below the greatest weight adds less than a millionth. */
export const NEGLIGIBLE = 14;
/** In deviations: the chance of an amount beyond is below 1e-18. */
const FARTHEST = 9;

/** A normal distribution of the square root of an amount, and the logarithm of how much it counts. */
export interface LogWeighted {
  readonly logWeight: number;
  readonly mean: number;
  /** Above 0. */
  readonly deviation: number;
}

/**
 * The distribution of the amount when it comes from each component with a chance in proportion to its weight. What a
 * component holds below a root of 0 counts as an amount of 0.
 *
 * @param components at least one.
 * @example rootNormalMixture([{ logWeight: 0, mean: 5, deviation: 1 }]).cdf(25) === 0.5
 */
export function rootNormalMixture(components: readonly LogWeighted[]): PointsDistribution {
  const peak = Math.max(...components.map(({ logWeight }) => logWeight));
  const kept = components
    .filter(({ logWeight }) => logWeight > peak - NEGLIGIBLE)
    .map(({ logWeight, mean, deviation }) => ({ weight: Math.exp(logWeight - peak), mean, deviation }));
  const total = kept.reduce((sum, { weight }) => sum + weight, 0);
  const farthest = Math.max(...kept.map(({ mean, deviation }) => mean + FARTHEST * deviation)) ** 2;

  const cdf = (points: number): number => {
    if (points < 0) return 0;
    const root = Math.sqrt(points);
    const sum = kept.reduce((so, one) => so + one.weight * normalCdf((root - one.mean) / one.deviation), 0);
    return Math.min(1, sum / total);
  };
  const quantile = (chance: number): number => {
    if (!(chance >= 0 && chance < 1)) throw new RangeError(`A chance from 0 to below 1, not ${chance}.`);
    if (cdf(0) >= chance) return 0;
    let [low, high] = [0, farthest];
    while (high - low > 1e-9 * high) {
      const middle = (low + high) / 2;
      if (cdf(middle) < chance) low = middle;
      else high = middle;
    }
    return high;
  };
  return { cdf, quantile };
}
