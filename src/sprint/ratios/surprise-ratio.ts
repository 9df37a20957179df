import type { SprintTotals } from '../totals.ts';
import type { Ratio } from '../undefined-value.ts';
import { ratioOf } from '../undefined-value.ts';

/**
 * Surprise ratio: how much work turned up that nobody foresaw, measured by the commitment.
 *
 * Formula: surprise work ÷ commitment. 0 or more, without an upper end.
 * Undefined when there was no commitment.
 * How it misleads: surprise on pulled-in cards counts as well, and what one person calls surprise
 * another calls drift.
 * Source: common practice, no published source.
 *
 * @example surpriseRatio({ surprisePoints: 4, commitmentPoints: 20 }) === 0.2
 */
export function surpriseRatio(totals: Pick<SprintTotals, 'surprisePoints' | 'commitmentPoints'>): Ratio {
  return ratioOf(totals.surprisePoints, totals.commitmentPoints, 'no-commitment');
}
