/**
 * What past sprints say of the amount that a plan of a certain size will bring: each as if it had begun with that plan. Those
 * that began with one alike speak the loudest, as they do on the sprint's first day (`sprint-likeness.ts`).
 */
import { normalCdf } from './normal-distribution.ts';
import type { Interval, PointsDistribution } from './points-distribution.ts';
import { quantile } from './quantile.ts';
import { likeness, type SprintTraits, traitsOf } from './sprint-likeness.ts';

/** A sprint that is over: what it began with, and an amount that it brought. */
export interface PlayedPlan {
  readonly planPoints: number;
  /** `low === high` when the amount is known. */
  readonly amount: Interval;
}

/** What a plan of a size brings. */
export interface PlanAmount extends Pick<PointsDistribution, 'cdf'> {
  /** How much speaks for it, in sprints with a plan just like this one. */
  readonly weight: number;
}

export type PlanAmounts = (planPoints: number) => PlanAmount;

/** However unlike, a plan of the past says a little. */
const LEAST_WEIGHT = 0.05;
/** What a model makes of all amounts, whatever the plan, counts as one sprint with a plan just like this one. */
const MODEL_WEIGHT = 1;
/** So many sprints go as if nothing of the past had been known: of plans as large as the usual one half are kept. */
const UNKNOWN_SHARE = 0.15;
const GUESS_SHARE = 0.7;
/** A plan that is e⁴ = 55 times as large takes this chance from a half to a sixth. */
const GUESS_LOG_DEVIATION = 4;
/** Of a normal distribution, the middle half is so many deviations wide. */
const MIDDLE_HALF_DEVIATIONS = 1.349;
/** Below this chance a ratio of two chances is noise. */
const NEGLIGIBLE = 1e-9;

/**
 * How much a plan of C points brings.
 *
 * Formula: cdf = 0.85·(model + Σ w·each past sprint's) ÷ (1 + Σ w) + 0.15·guess, with w = 0.05 + 0.95·likeness of its plan
 * to C: a team plans little where it expects little. Amounts are smoothed: the square root is normal around its own, with
 * the deviation 0.9·s·n^(−1/5), where s is the lesser of the deviation of the known roots and of their middle half ÷ 1.349
 * (Silverman, "Density estimation", 1986; memory). Of an amount that is only bounded, the model says where between its bounds
 * it lies. The guess is lognormal around 0.7 of the usual plan, with a deviation of 4: 15 sprints in 100 go as if nothing
 * had been known.
 * Units: points.
 * How it misleads: a plan may be small because less is expected or because more was not needed; sizes don't say which. A
 * very steady team is told of doubts that it doesn't deserve.
 * Source: ours; a model that counts as so many cases beside those that were seen: Ferguson, "A Bayesian analysis of some
 * nonparametric problems", 1973 (memory).
 *
 * @param usualPlanPoints above 0
 * @example planAmounts({ cdf: () => 0 }, [], 20)(20).cdf(14) === 0.075
 */
export function planAmounts(
  model: Pick<PointsDistribution, 'cdf'>,
  played: readonly PlayedPlan[],
  usualPlanPoints: number,
): PlanAmounts {
  const roots = played.flatMap(({ amount }) => (amount.low === amount.high ? [Math.sqrt(amount.low)] : []));
  const deviation = smoothing(roots);
  const past = played.map((plan) => ({ ...plan, traits: traitsOfPlan(plan.planPoints) }));
  const modelChance = remembered(model.cdf);
  return (planPoints) => {
    const traits = traitsOfPlan(planPoints);
    const weights = past.map((plan) => LEAST_WEIGHT + (1 - LEAST_WEIGHT) * likeness(plan.traits, traits));
    const weight = weights.reduce((sum, one) => sum + one, MODEL_WEIGHT);
    const cdf = (points: number): number => {
      if (points < 0) return 0;
      let sum = MODEL_WEIGHT * modelChance(points);
      for (const [i, { amount }] of past.entries()) {
        sum += (weights[i] as number) * chanceOf(amount, points, deviation, modelChance);
      }
      const known = Math.min(1, sum / weight);
      return (1 - UNKNOWN_SHARE) * known + UNKNOWN_SHARE * guessChance(points, usualPlanPoints);
    };
    return { cdf, weight };
  };
}

function traitsOfPlan(cardPoints: number): SprintTraits {
  return traitsOf({ cardPoints, finishedPoints: 0, underwayPoints: 0 });
}

/** Of one plan many sizes are asked for, and of one size many plans. */
function remembered(chance: (points: number) => number): (points: number) => number {
  const known = new Map<number, number>();
  return (points) => {
    const before = known.get(points);
    if (before !== undefined) return before;
    const now = chance(points);
    known.set(points, now);
    return now;
  };
}

function guessChance(points: number, usualPlanPoints: number): number {
  return points <= 0
    ? 0
    : normalCdf(Math.log(points / (GUESS_SHARE * usualPlanPoints)) / GUESS_LOG_DEVIATION);
}

function chanceOf(
  { low, high }: Interval,
  points: number,
  deviation: number,
  modelChance: (points: number) => number,
): number {
  if (low === high) {
    if (deviation === 0) return Number(points >= low);
    return normalCdf((Math.sqrt(points) - Math.sqrt(low)) / deviation);
  }
  const below = low === 0 ? 0 : modelChance(low);
  const share = (high === Number.POSITIVE_INFINITY ? 1 : modelChance(high)) - below;
  if (share < NEGLIGIBLE) return Number(points >= low);
  return Math.min(1, Math.max(0, (modelChance(points) - below) / share));
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
