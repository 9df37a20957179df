/** The ratios of a past sprint for tests: those that the test is about, and no others. */
import type { PastRatios } from '../../src/app/history/past-sprint.ts';
import { RATIO_IDS } from '../../src/sprint/sprint-ratios.ts';
import { undefinedBecause } from '../../src/sprint/undefined-value.ts';

const { velocityGrowth: _madeWhenRead, ...unknown } = Object.fromEntries(
  RATIO_IDS.map((id) => [id, undefinedBecause('cards-not-imported')]),
);

export function pastRatios(given: Partial<PastRatios>): PastRatios {
  return { ...(unknown as unknown as PastRatios), ...given };
}
