/** Describes a sample of numbers as the published tables do. */
import type { Statistic } from './published-table-7.ts';

/** Quantile by linear interpolation between the order statistics (type 7 of Hyndman and Fan, 1996). */
function quantile(sorted: readonly number[], share: number): number {
  const at = (sorted.length - 1) * share;
  const below = sorted[Math.floor(at)] as number;
  const above = sorted[Math.ceil(at)] as number;
  return below + (above - below) * (at - Math.floor(at));
}

/**
 * All statistics of a sample; SD has n − 1.
 *
 * @throws RangeError for fewer than two values, which have no SD.
 */
export function describeSample(values: readonly number[]): Record<Statistic, number> {
  const n = values.length;
  if (n < 2) throw new RangeError('A sample needs two values at least.');
  const sorted = values.toSorted((a, b) => a - b);
  const mean = values.reduce((total, value) => total + value, 0) / n;
  const squares = values.reduce((total, value) => total + (value - mean) ** 2, 0);
  return {
    n,
    min: sorted[0] as number,
    max: sorted[n - 1] as number,
    mean,
    median: quantile(sorted, 0.5),
    SD: Math.sqrt(squares / (n - 1)),
    IQR: quantile(sorted, 0.75) - quantile(sorted, 0.25),
  };
}
