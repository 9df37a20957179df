/** How a past sprint came out, as far as is known of it. Pure. */
import type { PastSprint } from '../app/history/past-sprint.ts';
import type { Thresholds } from '../sprint/thresholds.ts';
import { isDefined } from '../sprint/undefined-value.ts';
import { type Verdict, verdictOf } from '../sprint/verdict.ts';

/**
 * By today's thresholds. An import may leave out how much of the commitment was finished (then it is `not known`), or
 * the surprise work (then the kept share alone decides).
 */
export function pastVerdict(
  { commitmentPoints, ratios }: Pick<PastSprint, 'commitmentPoints' | 'ratios'>,
  thresholds: Thresholds,
): Verdict | 'not known' {
  if (commitmentPoints === 0) return 'no plan';
  const { keptShare, surpriseRatio } = ratios;
  if (!isDefined(keptShare)) return 'not known';
  return verdictOf({ keptShare, surpriseRatio: isDefined(surpriseRatio) ? surpriseRatio : 0 }, thresholds)
    .verdict;
}
