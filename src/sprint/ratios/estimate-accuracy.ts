import type { SprintTotals } from '../totals.ts';
import type { Ratio } from '../undefined-value.ts';
import { ratioOf } from '../undefined-value.ts';

/**
 * Estimate accuracy: how near the estimates came to the true sizes, over all cards not dropped.
 *
 * Formula: 1 − Σ|estimate error| ÷ load, computed as (load − Σ|estimate error|) ÷ load, which is exact
 * up to the division. At most 1; below 0 when the errors exceed the load.
 * Undefined when the sprint held no work.
 * How it misleads: errors within the scale's gaps count as none, and cards that nobody began have no
 * error yet.
 * Source: common practice, no published source.
 *
 * @example estimateAccuracy({ estimateErrorPoints: 4, loadPoints: 20 }) === 0.8
 */
export function estimateAccuracy(totals: Pick<SprintTotals, 'estimateErrorPoints' | 'loadPoints'>): Ratio {
  return ratioOf(totals.loadPoints - totals.estimateErrorPoints, totals.loadPoints, 'no-load');
}
