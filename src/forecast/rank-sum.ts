/** Whether two samples differ, whatever the shape of the numbers: they only have to be ordered. */

/** In standard deviations of the rank sum: nearer to its mean than this, the chance is never small. */
const NEAR = 2;

/**
 * The two-sided chance that a random division of all values would set the two samples at least as far apart.
 *
 * Formula: equal values share the mean of their ranks. With R the sum of the later sample's ranks and M its mean over
 * all divisions into samples of these sizes, the chance is the share of divisions whose sum is |R − M| or more from M,
 * counted exactly. It holds for numbers with ties, ends and long tails, since it makes no assumption on their shape.
 * Undefined cases: 1 where a sample is empty or all values are equal. Where the sum is within two of its standard
 * deviations of M the answer is 1 as well: the exact one would be no evidence of a difference either.
 * Source: Wilcoxon's rank-sum test, with its permutation distribution. No table is used.
 *
 * @example rankSumChance([1, 2, 3, 4, 5], [6, 7, 8, 9, 10]) === 2 / 252
 */
export function rankSumChance(earlier: readonly number[], later: readonly number[]): number {
  const all = [...earlier, ...later];
  const size = later.length;
  if (earlier.length === 0 || size === 0) return 1;
  // Twice the rank, so that a shared one is whole.
  const ranks = all.map((value) =>
    all.reduce((sum, other) => sum + (other < value ? 2 : other === value ? 1 : 0), 1),
  );
  const mean = size * (all.length + 1);
  const distance = Math.abs(total(ranks.slice(earlier.length)) - mean);
  const spread = total(ranks.map((rank) => (rank - all.length - 1) ** 2)) / (all.length - 1);
  const deviation = Math.sqrt((spread * size * earlier.length) / all.length);
  if (distance < NEAR * deviation || deviation === 0) return 1;
  const counts = divisionsBySum(ranks, size);
  const far = counts.filter((_, sum) => Math.abs(sum - mean) >= distance);
  return total(far) / total(counts);
}

/** In how many ways so many of the ranks can be chosen, by the sum of those chosen. */
function divisionsBySum(ranks: readonly number[], size: number): Float64Array {
  const greatest = total(ranks.toSorted((a, b) => b - a).slice(0, size));
  const counts = Array.from({ length: size + 1 }, () => new Float64Array(greatest + 1));
  (counts[0] as Float64Array)[0] = 1;
  for (const rank of ranks) {
    for (let chosen = size; chosen >= 1; chosen -= 1) {
      const [bigger, smaller] = [counts[chosen] as Float64Array, counts[chosen - 1] as Float64Array];
      for (let sum = greatest; sum >= rank; sum -= 1) {
        bigger[sum] = (bigger[sum] as number) + (smaller[sum - rank] as number);
      }
    }
  }
  return counts[size] as Float64Array;
}

function total(values: Iterable<number>): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum;
}
