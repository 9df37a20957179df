import type { UndefinedValue } from '../sprint/undefined-value.ts';
import { undefinedBecause } from '../sprint/undefined-value.ts';
import type { Interval } from './interval.ts';

/** With five values even the least and the greatest hold the median in only 93.75% of cases. */
const LEAST_VALUES = 6;

/**
 * Between which of the values the true median lies, in at least 95% of cases, whatever the distribution.
 *
 * Formula: from the r-th smallest to the r-th greatest value, with the largest r for which a fair coin thrown n
 * times shows fewer than r heads with a chance of at most 2.5%.
 * Units: those of the values. Undefined below six values, where no two of them are far enough apart.
 * How it misleads: it takes the values for independent and from one unchanging team.
 * Source: order statistics (the sign test turned round).
 *
 * @example medianInterval([27, 34, 35, 38, 39, 40, 40, 41, 45]).low === 34
 */
export function medianInterval(values: readonly number[]): Interval | UndefinedValue {
  const n = values.length;
  if (n < LEAST_VALUES) {
    return undefinedBecause('few-values', { needed: LEAST_VALUES, known: n });
  }
  const sorted = values.toSorted((a, b) => a - b);
  let rank = 0;
  // Logarithms, for 2^n leaves the range of numbers at about a thousand values.
  let logChance = -n * Math.LN2;
  let tail = Math.exp(logChance);
  while (tail <= 0.025) {
    rank += 1;
    logChance += Math.log((n - rank + 1) / rank);
    tail += Math.exp(logChance);
  }
  return { low: sorted[rank - 1] as number, high: sorted[n - rank] as number };
}
