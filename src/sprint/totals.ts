/** Sums over a sprint's cards, from which the ratios are made. */

import { estimateErrorPoints, plainEstimateErrorPoints } from './estimate-error.ts';
import type { CardState } from './ledger.ts';
import { type Scale, snap } from './scale.ts';

/** All amounts are points unless the name says otherwise. */
export interface SprintTotals {
  /** Estimates of the cards chosen at planning, dropped ones included. */
  readonly commitmentPoints: number;
  /** Estimates of the cards brought in after planning, dropped ones included. */
  readonly pulledInPoints: number;
  readonly surprisePoints: number;
  readonly driftPoints: number;
  /** surprise + drift. */
  readonly growthPoints: number;
  readonly workedPoints: number;
  /** Left on every card; with dropped cards, so that conservation holds for the sums as well. */
  readonly leftPoints: number;
  /** Left on the cards that are still in the sprint. */
  readonly openLeftPoints: number;
  /** commitment + pulled-in work + surprise work. */
  readonly loadPoints: number;
  /** Estimates of the cards finished. */
  readonly velocityPoints: number;
  /** Estimates of the committed cards that were finished. */
  readonly committedFinishedPoints: number;
  /** Σ |estimate error| over the cards not dropped, with the snap to the scale. */
  readonly estimateErrorPoints: number;
  /** The same without the snap. */
  readonly plainEstimateErrorPoints: number;
  readonly finishedCards: number;
  /** Finished cards whose true size snaps to their own estimate. */
  readonly onScaleCards: number;
}

/** Adds up a sprint's cards. An empty list gives zeros. */
export function sprintTotals(states: readonly CardState[], scale: Scale): SprintTotals {
  let commitmentPoints = 0;
  let pulledInPoints = 0;
  let surprisePoints = 0;
  let driftPoints = 0;
  let workedPoints = 0;
  let leftPoints = 0;
  let openLeftPoints = 0;
  let velocityPoints = 0;
  let committedFinishedPoints = 0;
  let errorPoints = 0;
  let plainErrorPoints = 0;
  let finishedCards = 0;
  let onScaleCards = 0;
  for (const state of states) {
    const { estimatePoints, origin } = state.card;
    if (origin === 'planned') commitmentPoints += estimatePoints;
    else pulledInPoints += estimatePoints;
    surprisePoints += state.surprisePoints;
    driftPoints += state.driftPoints;
    workedPoints += state.workedPoints;
    leftPoints += state.leftPoints;
    if (state.droppedOn !== undefined) continue;
    openLeftPoints += state.leftPoints;
    errorPoints += estimateErrorPoints(state, scale);
    plainErrorPoints += plainEstimateErrorPoints(state);
    if (!state.finished) continue;
    velocityPoints += estimatePoints;
    if (origin === 'planned') committedFinishedPoints += estimatePoints;
    finishedCards += 1;
    if (snap(state.trueSizePoints, scale) === estimatePoints) onScaleCards += 1;
  }
  return {
    commitmentPoints,
    pulledInPoints,
    surprisePoints,
    driftPoints,
    growthPoints: surprisePoints + driftPoints,
    workedPoints,
    leftPoints,
    openLeftPoints,
    loadPoints: commitmentPoints + pulledInPoints + surprisePoints,
    velocityPoints,
    committedFinishedPoints,
    estimateErrorPoints: errorPoints,
    plainEstimateErrorPoints: plainErrorPoints,
    finishedCards,
    onScaleCards,
  };
}
