/** How long tests with generated input search. Failures repeat, for the seeds are fixed. */

/** A larger number widens the search; `npm run test:long` sets it. */
const TIMES = Number(process.env.LOADLINE_SEARCH_TIMES ?? 1);

/** @param runs when the search is not widened */
export function search(runs: number, seed = 20261104): { numRuns: number; seed: number } {
  return { numRuns: runs * TIMES, seed };
}

/** Every nth case, beginning with the first; all of them when the search is widened. */
export function share<Case>(cases: readonly Case[], nth: number): Case[] {
  return cases.filter((_, i) => TIMES > 1 || i % nth === 0);
}

/** All cases by themselves when the search is widened, else so many at once. */
export function bundles<Case>(cases: readonly Case[], size: number): Case[][] {
  const step = TIMES > 1 ? 1 : size;
  return Array.from({ length: Math.ceil(cases.length / step) }, (_, i) =>
    cases.slice(i * step, (i + 1) * step),
  );
}
