/** How long tests with generated input search. Failures repeat, for the seeds are fixed. */

/** `npm run test:long` searches for longer than `npm test`. */
const TIMES = Number(process.env.LOADLINE_SEARCH_TIMES ?? 1);

/** @param runs in `npm test` */
export function search(runs: number, seed = 20261104): { numRuns: number; seed: number } {
  return { numRuns: runs * TIMES, seed };
}
