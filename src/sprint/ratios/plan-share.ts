import type { SprintTotals } from '../totals.ts';
import type { Ratio } from '../undefined-value.ts';
import { ratioOf } from '../undefined-value.ts';

/**
 * Plan share: how much of what the sprint became had been planned.
 *
 * Formula: commitment ÷ load. From 0 to 1; 0 when there was no commitment but some work.
 * Undefined when the sprint held no work at all.
 * How it misleads: a team that plans little and lets nothing in scores as well as one that plans much.
 * Source: common practice, no published source.
 *
 * @example planShare({ commitmentPoints: 20, loadPoints: 25 }) === 0.8
 */
export function planShare(totals: Pick<SprintTotals, 'commitmentPoints' | 'loadPoints'>): Ratio {
  return ratioOf(totals.commitmentPoints, totals.loadPoints, 'no-load');
}
