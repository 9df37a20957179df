/** The beta distribution: what is known of a share after some successes and failures. */
import { stirlingRest } from './log-gamma.ts';

/** A belief about a share, as if `alpha` successes and `beta` failures had been seen. Both above 0. */
export interface BetaParameters {
  readonly alpha: number;
  readonly beta: number;
}

const MOST_TERMS = 10_000;
const MOST_HALVINGS = 1_100;
/** Stands in for a denominator of 0 in the continued fraction. */
const TINY = 1e-300;

/** The continued fraction of the incomplete beta function, evaluated forwards (Lentz's way). */
function continuedFraction(x: number, alpha: number, beta: number): number {
  let c = 1;
  let d = 1 / (1 - ((alpha + beta) * x) / (alpha + 1) || TINY);
  let value = d;
  for (let m = 1; m <= MOST_TERMS; m += 1) {
    const even = (m * (beta - m) * x) / ((alpha + 2 * m - 1) * (alpha + 2 * m));
    d = 1 / (1 + even * d || TINY);
    c = 1 + even / c || TINY;
    value *= d * c;
    const odd = (-(alpha + m) * (alpha + beta + m) * x) / ((alpha + 2 * m) * (alpha + 2 * m + 1));
    d = 1 / (1 + odd * d || TINY);
    c = 1 + odd / c || TINY;
    value *= d * c;
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return value;
}

/**
 * x^α·(1 − x)^β ÷ B(α, β). The large logarithms are taken apart from what they differ by, in the way of Loader ("Fast and
 * accurate computation of binomial probabilities", 2000; memory): their plain difference has no digits left at α or β of a
 * million.
 */
function frontFactor(x: number, alpha: number, beta: number): number {
  const both = alpha + beta;
  return (
    Math.sqrt((alpha * beta) / (2 * Math.PI * both)) *
    Math.exp(
      stirlingRest(both) -
        stirlingRest(alpha) -
        stirlingRest(beta) -
        deviance(alpha, both * x) -
        deviance(beta, both * (1 - x)),
    )
  );
}

/** a·ln(a ÷ b) + b − a, which is never below 0, without cancellation where a and b are near each other. */
function deviance(a: number, b: number): number {
  const ratio = (a - b) / (a + b);
  if (Math.abs(ratio) > 0.1) return a * Math.log(a / b) + b - a;
  // ln(a/b) = 2·(r + r³/3 + r⁵/5 + …), and 2ar + b − a = (a − b)·r.
  let sum = (a - b) * ratio;
  let power = 2 * a * ratio;
  for (let k = 3; ; k += 2) {
    power *= ratio * ratio;
    const next = sum + power / k;
    if (next === sum) return sum;
    sum = next;
  }
}

/**
 * The chance that the share is at most x: the regularised incomplete beta function, to about 12 digits.
 *
 * Source: continued fraction of Abramowitz and Stegun 26.5.8, on whichever side of the mean it converges fast.
 *
 * @example betaCdf(0.25, { alpha: 1, beta: 1 }) === 0.25
 */
export function betaCdf(x: number, { alpha, beta }: BetaParameters): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  // Where the distribution is uniform the answer is known without rounding.
  if (alpha === 1 && beta === 1) return x;
  const front = frontFactor(x, alpha, beta);
  if (x < (alpha + 1) / (alpha + beta + 2)) return (front * continuedFraction(x, alpha, beta)) / alpha;
  return 1 - (front * continuedFraction(1 - x, beta, alpha)) / beta;
}

/**
 * The share that is not exceeded with this chance: the inverse of `betaCdf`, found by halving.
 *
 * @throws RangeError unless 0 ≤ chance ≤ 1.
 * @example betaQuantile(0.25, { alpha: 1, beta: 1 }) === 0.25
 */
export function betaQuantile(chance: number, parameters: BetaParameters): number {
  if (!(chance >= 0 && chance <= 1)) throw new RangeError(`A chance from 0 to 1, not ${chance}.`);
  if (chance === 0 || chance === 1) return chance;
  let low = 0;
  let high = 1;
  for (let i = 0; i < MOST_HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (betaCdf(middle, parameters) < chance) low = middle;
    else high = middle;
  }
  return high;
}
