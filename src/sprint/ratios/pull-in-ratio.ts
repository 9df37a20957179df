import type { SprintTotals } from '../totals.ts';
import type { Ratio } from '../undefined-value.ts';
import { ratioOf } from '../undefined-value.ts';

/**
 * Pull-in ratio: how much work was brought in after planning, measured by the commitment.
 *
 * Formula: pulled-in work ÷ commitment. 0 or more, without an upper end.
 * Undefined when there was no commitment.
 * How it misleads: work that was pulled in because of an emergency looks like a team that promised
 * too little.
 * Source: common practice, no published source.
 *
 * @example pullInRatio({ pulledInPoints: 5, commitmentPoints: 20 }) === 0.25
 */
export function pullInRatio(totals: Pick<SprintTotals, 'pulledInPoints' | 'commitmentPoints'>): Ratio {
  return ratioOf(totals.pulledInPoints, totals.commitmentPoints, 'no-commitment');
}
