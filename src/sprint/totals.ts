/** Sums over a sprint's cards, from which the ratios are made. */

import { estimateErrorPoints, plainEstimateErrorPoints } from './estimate-error.ts';
import type { CardState } from './ledger.ts';
import type { Scale } from './scale.ts';
import { snap } from './scale.ts';

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

function sum(states: readonly CardState[], points: (state: CardState) => number): number {
  return states.reduce((total, state) => total + points(state), 0);
}

/** Adds up a sprint's cards. An empty list gives zeros. */
export function sprintTotals(states: readonly CardState[], scale: Scale): SprintTotals {
  const estimate = (state: CardState): number => state.card.estimatePoints;
  const planned = states.filter((state) => state.card.origin === 'planned');
  const pulledIn = states.filter((state) => state.card.origin === 'pulled-in');
  const kept = states.filter((state) => state.droppedOn === undefined);
  const finished = states.filter((state) => state.finished);
  const commitmentPoints = sum(planned, estimate);
  const pulledInPoints = sum(pulledIn, estimate);
  const surprisePoints = sum(states, (state) => state.surprisePoints);
  const driftPoints = sum(states, (state) => state.driftPoints);
  return {
    commitmentPoints,
    pulledInPoints,
    surprisePoints,
    driftPoints,
    growthPoints: surprisePoints + driftPoints,
    workedPoints: sum(states, (state) => state.workedPoints),
    leftPoints: sum(states, (state) => state.leftPoints),
    openLeftPoints: sum(kept, (state) => state.leftPoints),
    loadPoints: commitmentPoints + pulledInPoints + surprisePoints,
    velocityPoints: sum(finished, estimate),
    committedFinishedPoints: sum(
      planned.filter((state) => state.finished),
      estimate,
    ),
    estimateErrorPoints: sum(kept, (state) => estimateErrorPoints(state, scale)),
    plainEstimateErrorPoints: sum(kept, plainEstimateErrorPoints),
    finishedCards: finished.length,
    onScaleCards: finished.filter((state) => snap(state.trueSizePoints, scale) === state.card.estimatePoints)
      .length,
  };
}
