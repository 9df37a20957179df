/** How far a card's true size lies from its estimate. */
import type { CardState } from './ledger.ts';
import { type Scale, snap } from './scale.ts';

type Sized = Pick<CardState, 'trueSizePoints' | 'card'>;

/**
 * Estimate error of a card in points, never negative: 0 if the true size snaps to the estimate, else
 * |true size − estimate|.
 *
 * How it misleads: the true size of an unfinished card is only "as last known", so early in a sprint
 * every error looks small.
 */
export function estimateErrorPoints(state: Sized, scale: Scale): number {
  return snap(state.trueSizePoints, scale) === state.card.estimatePoints
    ? 0
    : plainEstimateErrorPoints(state);
}

/** |true size − estimate| in points, without the snap. */
export function plainEstimateErrorPoints(state: Sized): number {
  return Math.abs(state.trueSizePoints - state.card.estimatePoints);
}
