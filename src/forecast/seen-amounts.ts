/**
 * Lets what was seen speak beside what a model makes of it. A model that is wrong about the shape of amounts, as where
 * every third sprint finishes nothing, stays wrong however many of them it has; what was seen itself does not.
 */
import { normalCdf } from './normal-distribution.ts';
import type { Interval, PointsDistribution } from './points-distribution.ts';
import { quantile } from './quantile.ts';

/**
 * The model counts as much as so many amounts seen. On real sprints fewer are a little better (docs/forecasts.md), but then
 * a single odd sprint bends the answer by more.
 */
const MODEL_WORTH = 6;
/** Of a normal distribution, the middle half is so many deviations wide. */
const MIDDLE_HALF_DEVIATIONS = 1.349;
/** Where nothing of a distribution lies further up, in deviations. */
const FARTHEST = 9;
/** Below this chance a ratio of two chances is noise. */
const NEGLIGIBLE = 1e-9;

/**
 * The distribution of the next amount: part what a model says, part the amounts that were seen.
 *
 * Formula: cdf = (6·model + Σ of each amount) ÷ (6 + n): what a Dirichlet process makes of n amounts when the model is
 * believed as much as six (Ferguson, "A Bayesian analysis of some nonparametric problems", 1973; memory). A known amount
 * is smoothed: its square root is normal around its own, with the deviation 0.9·s·n^(−1/5), where s is the lesser of the
 * deviation of the known roots and of their middle half ÷ 1.349 (Silverman, "Density estimation", 1986; memory). Of an
 * amount that is only bounded, the model says where between its bounds it lies.
 * Units: points. Without amounts it is the model.
 * How it misleads: few amounts leave gaps, and so chances that fall in steps; and a steady team looks a little less steady.
 *
 * @param seen each an interval that holds the amount: `low === high` when it is known.
 * @example withSeenAmounts({ cdf: (points) => (points < 10 ? 0 : 1), quantile: () => 10 }, [{ low: 4, high: 4 }]).cdf(5) === 1 / 7
 */
export function withSeenAmounts(model: PointsDistribution, seen: readonly Interval[]): PointsDistribution {
  const deviation = smoothing(seen.filter(({ low, high }) => low === high).map(({ low }) => Math.sqrt(low)));
  const parts = seen.map((one) => (one.low === one.high ? around(one.low, deviation) : within(model, one)));
  const cdf = (points: number): number => {
    if (points < 0) return 0;
    const byModel = model.cdf(points);
    return (
      parts.reduce((sum, part) => sum + part(points, byModel), MODEL_WORTH * byModel) /
      (MODEL_WORTH + parts.length)
    );
  };
  const mostSeen = Math.max(0, ...seen.map(({ low }) => Math.sqrt(low)));
  return {
    cdf,
    quantile: (chance) => {
      if (!(chance >= 0 && chance < 1)) throw new RangeError(`A chance from 0 to below 1, not ${chance}.`);
      if (cdf(0) >= chance) return 0;
      let [low, high] = [0, (mostSeen + FARTHEST * deviation) ** 2];
      // Beyond what was seen only the model speaks, and of it no more than its share.
      while (cdf(high) < chance) high = 2 * high + 1;
      while (high - low > NEGLIGIBLE * high) {
        const middle = (low + high) / 2;
        if (cdf(middle) < chance) low = middle;
        else high = middle;
      }
      return high;
    },
  };
}

/** The chance of at most so many points, given that chance by the model. */
type Part = (points: number, byModel: number) => number;

function around(amount: number, deviation: number): Part {
  const root = Math.sqrt(amount);
  return (points) =>
    deviation === 0 ? Number(points >= amount) : normalCdf((Math.sqrt(points) - root) / deviation);
}

function within(model: PointsDistribution, { low, high }: Interval): Part {
  const below = low === 0 ? 0 : model.cdf(low);
  const share = (high === Number.POSITIVE_INFINITY ? 1 : model.cdf(high)) - below;
  return (points, byModel) =>
    share < NEGLIGIBLE ? Number(points >= low) : Math.min(1, Math.max(0, (byModel - below) / share));
}

/** How far each of so many values is spread to stand for those that were not seen; 0 where half of them don't differ. */
function smoothing(values: readonly number[]): number {
  if (values.length < 2) return 0;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
  const middleHalf = (quantile(values, 0.75) as number) - (quantile(values, 0.25) as number);
  const spread = Math.min(Math.sqrt(variance), middleHalf / MIDDLE_HALF_DEVIATIONS);
  return 0.9 * spread * values.length ** -0.2;
}
