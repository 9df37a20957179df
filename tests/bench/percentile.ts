/** The smallest sample that so large a share of the samples does not exceed (nearest rank). @param share above 0, to 1 */
export function percentile(samples: readonly number[], share: number): number {
  if (samples.length === 0) throw new RangeError('there are no samples');
  const sorted = [...samples].sort((a, b) => a - b);
  return sorted[Math.ceil(share * sorted.length) - 1] as number;
}
