import type { SprintTotals } from '../totals.ts';
import type { Ratio } from '../undefined-value.ts';
import { ratioOf } from '../undefined-value.ts';

/**
 * Finish share: how much of the effort ended in finished cards.
 *
 * Formula: velocity ÷ points worked. 0 or more; above 1 when finished cards took less work than
 * estimated.
 * Undefined when nothing was worked.
 * How it misleads: it mixes half-done work with estimates that were too low; look at both.
 * Source: common practice, no published source.
 *
 * @example finishShare({ velocityPoints: 18, workedPoints: 24 }) === 0.75
 */
export function finishShare(totals: Pick<SprintTotals, 'velocityPoints' | 'workedPoints'>): Ratio {
  return ratioOf(totals.velocityPoints, totals.workedPoints, 'no-work-reported');
}
