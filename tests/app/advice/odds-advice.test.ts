import { describe, expect, test } from 'vitest';
import { bigCardsOf, oddsOf } from '../../../src/app/advice/odds-advice.ts';
import { pastSprintsOf } from '../past-sprints.ts';

const card = (estimatePoints: number, surprisePoints = 0) => ({ estimatePoints, surprisePoints });
const PAST = pastSprintsOf([
  { cards: [card(3), card(3, 1), card(8, 4)] },
  { cards: [] },
  { cards: [card(8, 2), card(8), card(1)] },
]);
const planned = (...estimates: number[]) =>
  estimates.map((estimatePoints, i) => ({ number: i + 1, estimatePoints }));

describe('the odds', () => {
  test('count the cards of all sprints whose cards are known', () => {
    const { odds, sprintsWithCards } = oddsOf(PAST);
    expect(sprintsWithCards).toBe(2);
    if ('undefined' in odds) throw new Error(odds.undefined.code);
    expect(
      odds.sizes.map(({ estimatePoints, cards, withSurprise }) => [estimatePoints, cards, withSurprise]),
    ).toEqual([
      [1, 1, 0],
      [3, 2, 1],
      [8, 3, 2],
    ]);
  });

  test('are not known where every sprint was imported without its cards', () => {
    expect(oddsOf(pastSprintsOf([{}, {}]))).toEqual({
      odds: { undefined: { code: 'no-closed-card' } },
      sprintsWithCards: 0,
    });
  });
});

describe('the big cards of a plan', () => {
  test('are those of its three largest sizes, largest first, with their numbers', () => {
    const big = bigCardsOf(planned(3, 8, 1, 5, 8, 0.5), PAST);
    if ('undefined' in big) throw new Error(big.undefined.code);
    expect(
      big.map(({ odds, cardNumbers }) => [odds.estimatePoints, odds.withSurprise, odds.cards, cardNumbers]),
    ).toEqual([
      [8, 2, 3, [2, 5]],
      // No card of this size has ever been closed: its odds are borrowed.
      [5, 0, 0, [4]],
      [3, 1, 2, [1]],
    ]);
    expect(big[1]?.odds).toMatchObject({ borrows: true, cards: 0 });
  });

  test('are none in an empty plan, and none of 0 points', () => {
    expect(bigCardsOf([], PAST)).toEqual([]);
    expect(bigCardsOf(planned(0, 0), PAST)).toEqual([]);
  });

  test('have no odds before a card was closed', () => {
    expect(bigCardsOf(planned(8), [])).toEqual({ undefined: { code: 'no-closed-card' } });
  });
});
