/** What a projection needs to know of a sprint at a moment, however it comes to be known. */
import type { CardState } from '../sprint/ledger.ts';

export interface SprintSoFar {
  /** Estimates of the cards in the sprint at that moment, finished or not; dropped ones are left out. */
  readonly cardPoints: number;
  /** Estimates of those that are finished. */
  readonly finishedPoints: number;
  /**
   * How much of the open cards' estimates has been worked off. Where only the state of a card is known, the estimates
   * of the cards in work may take its place, if they do so for every sprint of the history.
   */
  readonly underwayPoints: number;
}

/**
 * Reads it off the cards. A card that was worked on counts as underway by the share worked ÷ (worked + left) of its
 * estimate; so a card that grew is further from its end than it looked.
 *
 * @example sprintSoFar([]).cardPoints === 0
 */
export function sprintSoFar(states: readonly CardState[]): SprintSoFar {
  const cards = states.filter(({ droppedOn }) => droppedOn === undefined);
  return {
    cardPoints: sum(cards.map(({ card }) => card.estimatePoints)),
    finishedPoints: sum(cards.filter(({ finished }) => finished).map(({ card }) => card.estimatePoints)),
    underwayPoints: sum(cards.filter(({ finished }) => !finished).map(workedOffPoints)),
  };
}

function workedOffPoints({ card, workedPoints, trueSizePoints }: CardState): number {
  return trueSizePoints === 0 ? 0 : (card.estimatePoints * workedPoints) / trueSizePoints;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
