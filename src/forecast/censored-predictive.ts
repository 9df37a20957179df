/**
 * What the next amount will be like, when some of the earlier ones are known only to lie above, below or between.
 * Knows nothing of sprints.
 */

import { normalCdf } from './normal-distribution.ts';
import type { Interval, PointsDistribution } from './points-distribution.ts';

/**
 * Before any data, a team's output has a relative spread of 0.3, give or take a factor of 1.6 (0.12 to 0.75 in 95%
 * of teams). Ours, no published source; about two sprints' worth of data outweigh it.
 */
const USUAL_SPREAD = 0.3;
const SPREAD_LOG_DEVIATION = 0.47;
/**
 * One sprint in twenty is unlike the others, an incident or a windfall: anything from nothing to many times the usual,
 * so that it says nothing of those. In roots, as a share of the centre's. Ours, no published source.
 */
const ODD_SHARE = 0.05;
const ODD_DEVIATION = 1;
/** How fine the sums over level and spread are. A test measures what that costs. */
const FINENESS = { coarseSpreads: 16, coarseLevels: 40, spreads: 17, levels: 31 };
/** Where spreads are looked for, in deviations of the belief: many equal amounts speak for a very small one. */
const SPREAD_REACH = { low: -9, high: 6 };

const ROOT_2_PI = Math.sqrt(2 * Math.PI);

/** What is believed of the mean before any data. */
export interface UsualAmount {
  /** Where the belief is centred, above 0. */
  readonly centrePoints: number;
  /** Its standard deviation as a share of the centre, above 0. */
  readonly levelSpread: number;
}

/** The chance (or, of an exact amount, the density) of one observation, given by its roots. */
function likelihood({ low, high }: Interval, mean: number, deviation: number): number {
  const from = low === 0 && high > 0 ? Number.NEGATIVE_INFINITY : (low - mean) / deviation;
  if (low === high) return Math.exp(-0.5 * from ** 2) / (deviation * ROOT_2_PI);
  const to = high === Number.POSITIVE_INFINITY ? 1 : normalCdf((high - mean) / deviation);
  // Rounding must not make a chance negative.
  return Math.max(0, to - (from === Number.NEGATIVE_INFINITY ? 0 : normalCdf(from)));
}

/** Evenly spaced places from one end to the other. */
function evenly(from: number, to: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
}

/** The stretch around a peak, found coarsely, outside of which a height (a logarithm) is negligible. */
function stretch(height: (at: number) => number, places: readonly number[]): Interval & { peak: number } {
  const heights = places.map(height);
  const peak = Math.max(...heights);
  const counts = (one: number): boolean => one > peak - NEGLIGIBLE;
  const first = Math.max(heights.findIndex(counts) - 1, 0);
  const last = Math.min(heights.findLastIndex(counts) + 1, places.length - 1);
  return { low: places[first] as number, high: places[last] as number, peak };
}

/**
 * The distribution of the next amount, given earlier ones.
 *
 * Model: the square roots of the amounts are normal, for amounts of work spread the more the larger they are, but
 * less than in proportion, and they may be 0; one in twenty is odd and follows neither mean nor deviation (a
 * contaminated normal distribution), so that a single sprint of nothing or of ten times the usual bends the answer by
 * little. Mean and deviation are unknown, with the weak beliefs of the constants above; the answer averages over both
 * by summing over a grid (Bayes' rule), so that little data gives a wide answer and an amount that is only bounded adds
 * no more than it says. The next amount may be an odd one too.
 * Units: points in and out; any scale gives the same answer on that scale.
 * How far off: the grid moves quantiles by less than half a percent.
 * How it misleads: it takes the amounts for independent and from an unchanging team.
 *
 * @param observations each an interval that holds the amount: `low === high` when it is known, `high` infinite when
 *   it is only known to be at least `low`.
 * @param refine how many times finer than usual the grid is.
 * @throws RangeError unless centre and level spread are above 0.
 * @example Math.round(censoredPredictive([{ low: 20, high: 20 }, { low: 20, high: 20 }], { centrePoints: 20, levelSpread: 0.7 }).quantile(0.5)) === 20
 */
export function censoredPredictive(
  observations: readonly Interval[],
  { centrePoints, levelSpread }: UsualAmount,
  refine = 1,
): PointsDistribution {
  if (!(centrePoints > 0 && levelSpread > 0 && Number.isFinite(centrePoints))) {
    throw new RangeError(`A usual amount and a spread above 0, not ${centrePoints} and ${levelSpread}.`);
  }
  const centre = Math.sqrt(centrePoints);
  // A relative spread halves under the square root.
  const usualDeviation = (USUAL_SPREAD / 2) * centre;
  const levelDeviation = (levelSpread / 2) * centre;
  const roots = observations.map(({ low, high }) => ({ low: Math.sqrt(low), high: Math.sqrt(high) }));
  const ends = roots.flatMap(({ low, high }) => (Number.isFinite(high) ? [low, high] : [low]));
  const top = 1.5 * Math.max(centre + 3 * levelDeviation, ...ends);
  // Near an amount itself as well: where amounts hardly differ, their peak lies between even levels.
  const levels = [...evenly(0, top, FINENESS.coarseLevels * refine), ...ends].sort((a, b) => a - b);

  const deviationAt = (z: number): number => usualDeviation * Math.exp(SPREAD_LOG_DEVIATION * z);
  const odd = { mean: centre, deviation: ODD_DEVIATION * centre };
  const known = roots.map((one) => ({
    one,
    oddly: ODD_SHARE * likelihood(one, odd.mean, odd.deviation),
  }));
  const heightAt = (z: number): ((mean: number) => number) => {
    const deviation = deviationAt(z);
    return (mean) =>
      known.reduce(
        (sum, { one, oddly }) => sum + Math.log((1 - ODD_SHARE) * likelihood(one, mean, deviation) + oddly),
        -0.5 * z ** 2 - 0.5 * ((mean - centre) / levelDeviation) ** 2,
      );
  };
  // Twice, for a narrow peak may lie between two coarse levels.
  const levelsOf = (height: (mean: number) => number): ReturnType<typeof stretch> => {
    const coarse = stretch(height, levels);
    return stretch(height, evenly(coarse.low, coarse.high, FINENESS.levels * refine));
  };
  const spreads = stretch(
    (z) => levelsOf(heightAt(z)).peak,
    evenly(SPREAD_REACH.low, SPREAD_REACH.high, FINENESS.coarseSpreads),
  );

  const components: LogWeighted[] = [];
  for (const z of evenly(spreads.low, spreads.high, FINENESS.spreads * refine)) {
    const height = heightAt(z);
    const { low, high } = levelsOf(height);
    const means = evenly(low, high, FINENESS.levels * refine);
    for (const [i, mean] of means.entries()) {
      // The trapezoidal rule: the ends count half, which matters where the level ends at 0.
      const share = i === 0 || i === means.length - 1 ? 0.5 : 1;
      const logWeight = height(mean) + Math.log(share * (high - low));
      components.push({ logWeight, mean, deviation: deviationAt(z) });
    }
  }
  const peak = Math.max(...components.map(({ logWeight }) => logWeight));
  const sum = components.reduce((so, { logWeight }) => so + Math.exp(logWeight - peak), 0);
  const oddWeight = peak + Math.log((sum * ODD_SHARE) / (1 - ODD_SHARE));
  return rootNormalMixture([...components, { logWeight: oddWeight, ...odd }]);
}

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
 * A weighted average of amounts whose square roots are normal. Where the weights come from is not its business.
 *
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
    let sum = 0;
    for (const { weight, mean, deviation } of kept) {
      const z = (root - mean) / deviation;
      if (z > -FARTHEST) sum += weight * normalCdf(z);
    }
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
