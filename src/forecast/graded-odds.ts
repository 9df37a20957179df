/**
 * The chance of an event for cards of any size, when it may go with size: what is known of one size is lent to the
 * others, and how much is learned from the data.
 */
import type { BetaParameters } from './beta-distribution.ts';
import { logGamma } from './log-gamma.ts';

/** The cards of one estimate, counted. */
export interface CountedGroup {
  readonly estimatePoints: number;
  /** May hold parts of cards: those still open count by what was done of them. */
  readonly trials: number;
  /** At most the trials. */
  readonly successes: number;
}

interface Axis {
  readonly middle: number;
  readonly spread: number;
}

/** What is believed before any data, of log-odds: somewhat rare, and a little more often in larger cards; neither surely. */
const LEVEL: Axis = { middle: -1, spread: 1 };
const SLOPE: Axis = { middle: 0.4, spread: 0.7 };
/** How much the line says of a size: as much as so many cards of its own. All as likely. */
const STRENGTHS = [3, 10, 30, 1000];
/** A product of more could be too great for a number. */
const MOST_FACTORS = 30;
/** Steps of the grid to each side, and how many spreads of the belief it covers to each side. */
const STEPS = 6;
const REACH = 3;
/** A second, finer grid is laid over where the first found weight, at least so wide for what fell between its points. */
const LEAST_FINE_SPREAD = 0.15;

/**
 * Logarithm of the chance to see the successes of a group in the order in which they came, when its share is drawn from
 * the beta distribution.
 *
 * Formula: ln(B(α + k, β + n − k) ÷ B(α, β)).
 */
export function betaBinomialLogLikelihood(
  { alpha, beta }: BetaParameters,
  { trials, successes }: Pick<CountedGroup, 'trials' | 'successes'>,
): number {
  return logRise(alpha, successes) + logRise(beta, trials - successes) - logRise(alpha + beta, trials);
}

/** ln Γ(from + by) − ln Γ(from): for a few whole steps as the product that it is, which is many times faster. */
function logRise(from: number, by: number): number {
  if (!Number.isInteger(by) || by > MOST_FACTORS) return logGamma(from + by) - logGamma(from);
  let product = 1;
  for (let i = 0; i < by; i += 1) product *= from + i;
  return Math.log(product);
}

interface Line {
  /** Log-odds at one point. */
  readonly level: number;
  /** Added for each time that the estimate is e times as large. */
  readonly slope: number;
  readonly strength: number;
  readonly weight: number;
}

/**
 * What is believed of the share of each estimate asked for, as the beta distribution with the belief's mean and variance.
 *
 * Formula: the share of size s is drawn from a beta distribution with mean m(s) = 1 ÷ (1 + e^−(a + b·ln s)) and strength
 * α + β = K. Before the data a is normal (−1, 1), b normal (0.4, 0.7) and K 3, 10, 30 or 1,000 with the same chance;
 * the belief after the data is summed over a grid of a, b and K, and of each point over its beta posterior.
 * Units: points in, shares out (1 means 100%). Estimates of 0 count as half a point. Without groups it is the belief
 * before any data.
 * How it misleads: log-odds in a straight line are a guess beyond the largest size that was ever done.
 * Source: an ordinary Bayesian logistic regression with beta-binomial counts; the spreads are ours, checked by simulation.
 */
export function gradedOdds(groups: readonly CountedGroup[], estimates: readonly number[]): BetaParameters[] {
  const counted = groups.filter(({ trials }) => trials > 0);
  const coarse = linesOf(counted, LEVEL, SLOPE);
  const lines = linesOf(counted, axisOf(coarse, 'level'), axisOf(coarse, 'slope'));
  return estimates.map((estimatePoints) => {
    const own = counted.find((group) => group.estimatePoints === estimatePoints);
    return beliefOf(lines, own ?? { estimatePoints, trials: 0, successes: 0 });
  });
}

function linesOf(groups: readonly CountedGroup[], levels: Axis, slopes: Axis): Line[] {
  const points = gridOf(levels).flatMap((level) =>
    gridOf(slopes).flatMap((slope) => STRENGTHS.map((strength) => ({ level, slope, strength }))),
  );
  const logWeights = points.map((point) => {
    const before =
      ((point.level - LEVEL.middle) / LEVEL.spread) ** 2 + ((point.slope - SLOPE.middle) / SLOPE.spread) ** 2;
    return groups.reduce(
      (sum, group) => sum + betaBinomialLogLikelihood(betaAt(point, group.estimatePoints), group),
      -before / 2,
    );
  });
  const most = Math.max(...logWeights);
  const weights = logWeights.map((one) => Math.exp(one - most));
  const total = weights.reduce((sum, one) => sum + one, 0);
  return points.map((point, i) => ({ ...point, weight: (weights[i] as number) / total }));
}

function gridOf({ middle, spread }: Axis): number[] {
  return Array.from({ length: 2 * STEPS + 1 }, (_, i) => middle + ((i - STEPS) / STEPS) * REACH * spread);
}

function axisOf(lines: readonly Line[], of: 'level' | 'slope'): Axis {
  const middle = lines.reduce((sum, line) => sum + line.weight * line[of], 0);
  const variance = lines.reduce((sum, line) => sum + line.weight * (line[of] - middle) ** 2, 0);
  return { middle, spread: Math.max(Math.sqrt(variance), LEAST_FINE_SPREAD) };
}

function betaAt({ level, slope, strength }: Omit<Line, 'weight'>, estimatePoints: number): BetaParameters {
  const logOdds = level + slope * Math.log(Math.max(estimatePoints, 0.5));
  const mean = 1 / (1 + Math.exp(-logOdds));
  // Neither end is ever certain.
  const inside = Math.min(Math.max(mean, 1e-6), 1 - 1e-6);
  return { alpha: inside * strength, beta: (1 - inside) * strength };
}

/** Mean and variance over all lines, given what is known of the size itself. */
function beliefOf(
  lines: readonly Line[],
  { estimatePoints, trials, successes }: CountedGroup,
): BetaParameters {
  let mean = 0;
  let square = 0;
  for (const line of lines) {
    const before = betaAt(line, estimatePoints);
    const [alpha, beta] = [before.alpha + successes, before.beta + trials - successes];
    const share = alpha / (alpha + beta);
    mean += line.weight * share;
    square += line.weight * (share ** 2 + (share * (1 - share)) / (alpha + beta + 1));
  }
  const strength = (mean * (1 - mean)) / (square - mean ** 2) - 1;
  return { alpha: mean * strength, beta: (1 - mean) * strength };
}
