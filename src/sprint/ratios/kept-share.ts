import type { SprintTotals } from '../totals.ts';
import type { Ratio } from '../undefined-value.ts';
import { ratioOf } from '../undefined-value.ts';

/**
 * Kept share: how much of what was promised got finished.
 *
 * Formula: estimates of the committed cards that were finished ÷ commitment. From 0 to 1.
 * Undefined when there was no commitment.
 * How it misleads: a card that is almost done counts as nothing, and one big card can decide it alone.
 * Source: common practice, no published source.
 *
 * @example keptShare({ committedFinishedPoints: 16, commitmentPoints: 20 }) === 0.8
 */
export function keptShare(totals: Pick<SprintTotals, 'committedFinishedPoints' | 'commitmentPoints'>): Ratio {
  return ratioOf(totals.committedFinishedPoints, totals.commitmentPoints, 'no-commitment');
}
