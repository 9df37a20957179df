import { type UndefinedValue, undefinedBecause } from '../sprint/undefined-value.ts';
import { normalQuantile } from './normal-distribution.ts';
import type { Interval } from './points-distribution.ts';

/**
 * How far the true share may lie from the share that was seen: Wilson's score interval.
 *
 * Formula, with p = successes ÷ trials and z the normal quantile of ½ + confidence ÷ 2:
 * (p + z²/2n ± z·√(p(1−p)/n + z²/4n²)) ÷ (1 + z²/n).
 * Both ends are shares from 0 to 1. Undefined without a trial.
 * How it misleads: it assumes that the trials are independent and of the same kind. Cards of one sprint are neither quite, so the
 * truth is a little less sure than it says. And it is right in so many cases of a hundred on average over shares,
 * not for every single one.
 * Source: Wilson 1927; Newcombe, "Two-sided confidence intervals for the single proportion", 1998.
 *
 * @param confidence how often such an interval holds the truth; 0.95 leaves 2.5% on either side.
 * @throws RangeError unless 0 ≤ successes ≤ trials and 0 < confidence < 1.
 * @example wilsonInterval(0, 20).low === 0
 */
export function wilsonInterval(
  successes: number,
  trials: number,
  confidence = 0.95,
): Interval | UndefinedValue {
  if (!(successes >= 0 && successes <= trials)) {
    throw new RangeError(`Successes from 0 to ${trials}, not ${successes}.`);
  }
  if (!(confidence > 0 && confidence < 1)) {
    throw new RangeError(`A confidence between 0 and 1, not ${confidence}.`);
  }
  if (trials === 0) return undefinedBecause('nothing-to-count');
  const z = normalQuantile(0.5 + confidence / 2);
  const share = successes / trials;
  const shrink = 1 + z ** 2 / trials;
  const centre = (share + z ** 2 / (2 * trials)) / shrink;
  const reach = (z / shrink) * Math.sqrt((share * (1 - share)) / trials + z ** 2 / (4 * trials ** 2));
  // At the ends centre and reach are equal in exact arithmetic; rounding must not leave the range.
  return {
    low: successes === 0 ? 0 : Math.max(0, centre - reach),
    high: successes === trials ? 1 : Math.min(1, centre + reach),
  };
}
