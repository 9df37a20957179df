/** Invented answers to "which sizes tend to hold surprises?", made by the odds themselves. */
import type { OddsAdvice } from '../../src/app/advice/advice.ts';
import { type ClosedCard, surpriseOdds } from '../../src/forecast/surprise-odds.ts';
import { exampleTeam } from './past-examples.ts';

export function oddsAdvice(
  cards: readonly ClosedCard[],
  askedEstimates: readonly number[] = [],
  sprints = 9,
): OddsAdvice {
  return {
    team: exampleTeam,
    on: '2026-11-13',
    sprints,
    importedSprints: 0,
    question: { about: 'odds' },
    odds: surpriseOdds(cards, askedEstimates),
    sprintsWithCards: sprints,
  };
}

/** So many cards of a size, each n-th with these points of surprise work. */
export function cardsOf(
  estimatePoints: number,
  cards: number,
  each: number,
  surprisePoints: number,
): ClosedCard[] {
  return Array.from({ length: cards }, (_, index) => ({
    estimatePoints,
    surprisePoints: index % each === each - 1 ? surprisePoints : 0,
  }));
}

export const ordinaryOdds = oddsAdvice(
  [
    ...cardsOf(1, 31, 12, 0.5),
    ...cardsOf(2, 28, 7, 1),
    ...cardsOf(3, 24, 4, 1.5),
    ...cardsOf(5, 15, 3, 2),
    ...cardsOf(8, 10, 2, 4),
    ...cardsOf(13, 3, 1, 8),
  ],
  [21],
);
export const noCards = oddsAdvice([], [], 0);
export const oneCard = oddsAdvice(cardsOf(0.5, 1, 1, 999.5), [], 1);
export const neverSurprised = oddsAdvice([...cardsOf(1, 20, 50, 1), ...cardsOf(3, 2, 50, 1)]);
export const alwaysSurprised = oddsAdvice([...cardsOf(1, 400, 1, 1), ...cardsOf(999.5, 200, 1, 99.5)]);
export const manySizes = oddsAdvice(
  Array.from({ length: 42 }, (_, index) =>
    cardsOf(index + 0.5, 3 + ((index * 7) % 23), 1 + (index % 5), 1.5),
  ).flat(),
);
export const thirtySizes = oddsAdvice(
  Array.from({ length: 30 }, (_, index) =>
    cardsOf(index + 1, 3 + ((index * 7) % 23), 1 + (index % 5), 1.5),
  ).flat(),
);
