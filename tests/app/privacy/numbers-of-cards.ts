/** The numbers of cards and of every answer in the ledger, without who gave it and in what words. */
import type { SprintCardState } from '../../../src/app/cards/card-line.ts';

export function numbersOfCards(states: readonly SprintCardState[]): unknown[] {
  return states.map((state) => {
    const { card, workedPoints, leftPoints, surprisePoints, driftPoints, trueSizePoints } = state;
    const { finished, finishedOn, droppedOn, entries } = state;
    return {
      number: card.number,
      estimatePoints: card.estimatePoints,
      ...{ workedPoints, leftPoints, surprisePoints, driftPoints, trueSizePoints },
      ...{ finished, finishedOn, droppedOn },
      entries: entries.map((entry) => [
        entry.answer.day,
        entry.answer.order,
        entry.previousLeftPoints,
        entry.workedPoints,
        entry.leftPoints,
        entry.growthPoints,
        entry.surprisePoints,
        entry.driftPoints,
      ]),
    };
  });
}
