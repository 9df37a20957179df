/**
 * Finds how a share varies from group to group, so that a group with little history can borrow from the others.
 * It doesn't decide who borrows.
 */
import { type UndefinedValue, undefinedBecause } from '../sprint/undefined-value.ts';
import type { BetaParameters } from './beta-distribution.ts';
import { logGamma } from './log-gamma.ts';
import { median } from './quantile.ts';

/** A group that was counted, e.g. the cards of one estimate. */
export interface CountedGroup {
  readonly trials: number;
  /** At most the trials. */
  readonly successes: number;
}

/** What the fit leans on beside the data. */
export type FitCaution = 'cautious' | 'data only';

/** The fit looks for α + β between these: from "groups have nothing in common" to "all are alike". */
const LEAST_STRENGTH = 0.01;
const MOST_STRENGTH = 1e6;
/** Of a search from coarse to fine along ln(α + β), in case there is more than one peak. */
const COARSE_STEPS = 24;
const LEAST_MEAN = 1e-9;

/**
 * Logarithm of the chance to see the successes of every group in the order in which they came, when each group's
 * share is drawn from the beta distribution. Add the logarithm of "trials over successes" for each group to get
 * the chance of the counts.
 *
 * Formula: Σ ln(B(α + k, β + n − k) ÷ B(α, β)).
 *
 * @example Math.round(Math.exp(betaBinomialLogLikelihood({ alpha: 1, beta: 1 }, [{ trials: 1, successes: 0 }])) * 100) === 50
 */
export function betaBinomialLogLikelihood(
  { alpha, beta }: BetaParameters,
  groups: readonly CountedGroup[],
): number {
  const base = logGamma(alpha + beta) - logGamma(alpha) - logGamma(beta);
  return groups.reduce(
    (sum, { trials, successes }) =>
      sum +
      base +
      logGamma(alpha + successes) +
      logGamma(beta + trials - successes) -
      logGamma(alpha + beta + trials),
    0,
  );
}

interface RepeatedGroup extends CountedGroup {
  readonly times: number;
}

function gathered(groups: readonly CountedGroup[]): RepeatedGroup[] {
  const byCounts = new Map<string, RepeatedGroup>();
  for (const { trials, successes } of groups) {
    const key = `${successes}/${trials}`;
    byCounts.set(key, { trials, successes, times: (byCounts.get(key)?.times ?? 0) + 1 });
  }
  return [...byCounts.values()];
}

/**
 * The beta distribution that the groups' shares seem to come from.
 *
 * Its mean α ÷ (α + β) is the share of a group about which nothing is known, and its strength α + β says how many
 * trials of its own a group needs until it counts as much as all the others.
 *
 * Method: the greatest likelihood, found by search, not the method of moments, which may give negative parameters
 * for a handful of groups. With little data the likelihood alone still runs off to "all alike" or to a share of
 * exactly 0, so the cautious fit (the default) adds two weak beliefs: half a trial with and half a trial without
 * success on the mean, as in Jeffreys' prior for a share; and, on the strength, that a group of the usual number
 * of trials is as likely to keep a tenth of its own share as nine tenths (the uniform shrinkage prior). Among many
 * groups both vanish.
 * Units: trials. Undefined without a trial.
 * How it misleads: it takes the groups for exchangeable: a size doesn't borrow more from its neighbours than from
 * far sizes. And it is a single best fit: with few groups its own error isn't passed on.
 * Sources: Skellam 1948 (the distribution); Christiansen and Morris 1997 (uniform shrinkage).
 *
 * @example betaBinomialFit([]).undefined.code === 'nothing-to-count'
 */
export function betaBinomialFit(
  groups: readonly CountedGroup[],
  caution: FitCaution = 'cautious',
): BetaParameters | UndefinedValue {
  const counted = gathered(groups.filter(({ trials }) => trials > 0));
  if (counted.length === 0) return undefinedBecause('nothing-to-count');
  const usualTrials = median(groups.filter(({ trials }) => trials > 0).map(({ trials }) => trials)) as number;

  const height = (mean: number, strength: number): number => {
    const parameters = { alpha: mean * strength, beta: (1 - mean) * strength };
    let sum = 0;
    for (const group of counted) sum += group.times * betaBinomialLogLikelihood(parameters, [group]);
    if (caution === 'data only') return sum;
    return (
      sum + 0.5 * Math.log(mean * (1 - mean)) + Math.log(strength) - 2 * Math.log(usualTrials + strength)
    );
  };
  // For a given strength the height has one peak: it is a sum of concave functions of the mean.
  const bestMean = (strength: number): number =>
    greatest((mean) => height(mean, strength), LEAST_MEAN, 1 - LEAST_MEAN);
  const profile = (logStrength: number): number => {
    const strength = Math.exp(logStrength);
    return height(bestMean(strength), strength);
  };

  const from = Math.log(LEAST_STRENGTH);
  const step = (Math.log(MOST_STRENGTH) - from) / COARSE_STEPS;
  let best = 0;
  let bestHeight = Number.NEGATIVE_INFINITY;
  for (let i = 0; i <= COARSE_STEPS; i += 1) {
    const here = profile(from + i * step);
    if (here > bestHeight) [best, bestHeight] = [i, here];
  }
  const strength = Math.exp(
    greatest(profile, from + Math.max(best - 1, 0) * step, from + Math.min(best + 1, COARSE_STEPS) * step),
  );
  const mean = bestMean(strength);
  return { alpha: mean * strength, beta: (1 - mean) * strength };
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;
const STEPS = 60;

/**
 * Where a function with one peak is greatest between two ends: golden-section search, to about 8 digits, which is
 * as near as function values can tell.
 *
 * @example Math.round(greatest((x) => -((x - 2) ** 2), 0, 5) * 1000) === 2000
 */
export function greatest(height: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let [atLeft, atRight] = [height(left), height(right)];
  for (let i = 0; i < STEPS && high - low > 1e-9 * (Math.abs(low) + Math.abs(high)); i += 1) {
    if (atLeft < atRight) {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = height(right);
    } else {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = height(left);
    }
  }
  return (low + high) / 2;
}
