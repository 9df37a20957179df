/** How long tests with generated input search. Failures repeat, for the seeds are fixed. */

/** A larger number widens the search. */
const TIMES = Number(process.env.LOADLINE_SEARCH_TIMES ?? 1);

/** @param runs when the search is not widened */
export function search(runs: number, seed = 20261104): { numRuns: number; seed: number } {
  return { numRuns: runs * TIMES, seed };
}
