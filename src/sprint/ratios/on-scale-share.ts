import type { SprintTotals } from '../totals.ts';
import type { Ratio } from '../undefined-value.ts';
import { ratioOf } from '../undefined-value.ts';

/**
 * On-scale share: how many of the finished cards turned out to be the size that the team had said.
 *
 * Formula: finished cards whose true size lies nearest to their own estimate on the scale ÷ finished
 * cards. Counts cards, not points. From 0 to 1.
 * Undefined when no card was finished.
 * How it misleads: an estimate that is not on the scale can never be hit, and one card of two is
 * already a half.
 * Source: common practice, no published source.
 *
 * @example onScaleShare({ onScaleCards: 3, finishedCards: 4 }) === 0.75
 */
export function onScaleShare(totals: Pick<SprintTotals, 'onScaleCards' | 'finishedCards'>): Ratio {
  return ratioOf(totals.onScaleCards, totals.finishedCards, 'no-card-finished');
}
