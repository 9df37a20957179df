import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { betaQuantile } from '../../src/forecast/beta-distribution.ts';
import { gradedOdds } from '../../src/forecast/graded-odds.ts';
import type { Interval } from '../../src/forecast/points-distribution.ts';
import {
  type ClosedCard,
  LITTLE_HISTORY_CARDS,
  type SurpriseOdds,
  type SurpriseOddsBySize,
  surpriseOdds,
} from '../../src/forecast/surprise-odds.ts';
import { wilsonInterval } from '../../src/forecast/wilson-interval.ts';

/** So many cards of a size, the first ones with the surprises given. */
function cards(estimatePoints: number, count: number, surprises: readonly number[] = []): ClosedCard[] {
  return Array.from({ length: count }, (_, i) => ({ estimatePoints, surprisePoints: surprises[i] ?? 0 }));
}

/** Small cards rarely hold surprise, big ones often; there are few big ones. */
const HISTORY = [
  ...cards(1, 30, [1, 0.5]),
  ...cards(3, 20, [2, 1, 3, 1]),
  ...cards(5, 13, [2, 2, 5, 1]),
  ...cards(8, 4, [3, 5, 2]),
  ...cards(13, 1, [8]),
];

function odds(history: readonly ClosedCard[], asked: readonly number[] = []): SurpriseOddsBySize {
  return surpriseOdds(history, asked) as SurpriseOddsBySize;
}

function ofSize(estimatePoints: number, table: SurpriseOddsBySize): SurpriseOdds {
  return table.sizes.find((size) => size.estimatePoints === estimatePoints) as SurpriseOdds;
}

const anyCards = fc.array(
  fc.record({
    estimatePoints: fc.constantFrom(1, 2, 3, 5, 8, 13),
    surprisePoints: fc.constantFrom(0, 0, 0, 0.5, 1, 3),
  }),
  { minLength: 1, maxLength: 60 },
);

describe('the surprise odds by size', () => {
  test('count the cards of each size, ascending, and those that held surprise work', () => {
    const table = odds(HISTORY);
    expect(
      table.sizes.map(({ estimatePoints, cards: n, withSurprise }) => [estimatePoints, n, withSurprise]),
    ).toEqual([
      [1, 30, 2],
      [3, 20, 4],
      [5, 13, 4],
      [8, 4, 3],
      [13, 1, 1],
    ]);
    expect([table.cards, table.withSurprise]).toEqual([68, 14]);
  });

  test('a size with history keeps its own share and its Wilson interval', () => {
    const three = ofSize(3, odds(HISTORY));
    expect(three).toMatchObject({ borrows: false, likelyShare: 0.2 });
    expect(three.likelyInterval).toEqual(wilsonInterval(4, 20));
  });

  test('a size with little history borrows: the belief in which the odds may go with size', () => {
    const groups = [
      { estimatePoints: 1, trials: 30, successes: 2 },
      { estimatePoints: 3, trials: 20, successes: 4 },
      { estimatePoints: 5, trials: 13, successes: 4 },
      { estimatePoints: 8, trials: 4, successes: 3 },
      { estimatePoints: 13, trials: 1, successes: 1 },
    ];
    const [belief] = gradedOdds(groups, [8]);
    if (!belief) throw new Error('no belief');
    const eight = ofSize(8, odds(HISTORY));
    expect(eight.borrows).toBe(true);
    expect(eight.likelyShare).toBeCloseTo(belief.alpha / (belief.alpha + belief.beta), 12);
    expect(eight.likelyInterval.low).toBeCloseTo(betaQuantile(0.05, belief), 12);
  });

  test('one card out of one is no certainty', () => {
    const [one] = odds([...cards(3, 40, [1, 1, 1, 1]), ...cards(13, 1, [8])], [13]).sizes.slice(-1);
    expect(one?.likelyShare).toBeLessThan(0.7);
    expect(one?.likelyShare).toBeGreaterThan(0.1);
  });

  test('cards that were never begun are left out, and open ones count by what was done of them', () => {
    const open = (doneShare: number, count: number): ClosedCard[] =>
      Array.from({ length: count }, () => ({ estimatePoints: 8, surprisePoints: 0, doneShare }));
    const begun = cards(8, 12, [3, 3, 3, 3, 3, 3]);
    const table = odds([...begun, ...open(0, 20), ...open(0.25, 4)]);
    expect(table).toMatchObject({ cards: 16, withSurprise: 6, openCards: 4 });
    expect(ofSize(8, table).likelyShare).toBeCloseTo(6 / 13, 12);
    expect(surpriseOdds(open(0, 3))).toEqual({ undefined: { code: 'no-closed-card' } });
  });

  test('no surprise so far is no promise of none', () => {
    const { sizes } = odds(cards(2, 6), [5]);
    for (const size of sizes) {
      expect(size.likelyShare).toBeGreaterThan(0);
      expect(size.likelyInterval.high).toBeGreaterThan(0.05);
    }
  });

  test('a size that no card had borrows everything and says why it has no share of its own', () => {
    const table = odds(HISTORY, [21, 3]);
    const twentyOne = ofSize(21, table);
    const none = { undefined: { code: 'no-card-of-size', estimatePoints: 21 } };
    expect(twentyOne).toMatchObject({
      cards: 0,
      borrows: true,
      isLargerThanAny: true,
      medianSurprisePoints: none,
    });
    expect(ofSize(4, odds(HISTORY, [4]))).toMatchObject({ cards: 0, isLargerThanAny: false });
    // The odds grew with size as far as they are known.
    expect(twentyOne.likelyShare).toBeGreaterThan(ofSize(5, table).likelyShare);
    expect(table.sizes.filter((size) => size.estimatePoints === 3)).toHaveLength(1);
  });

  test('the median surprise is that of the cards that held one', () => {
    const table = odds([...HISTORY, ...cards(2, 3)]);
    expect(ofSize(5, table).medianSurprisePoints).toBe(2);
    expect(ofSize(3, table).medianSurprisePoints).toBe(1.5);
    expect(ofSize(2, table).medianSurprisePoints).toEqual({
      undefined: { code: 'no-surprise-of-size', estimatePoints: 2 },
    });
    expect(ofSize(5, table).medianSurpriseInterval).toHaveProperty('undefined');
    const many = odds(cards(5, 9, [27, 34, 35, 38, 39, 40, 40, 41, 45]));
    expect(ofSize(5, many).medianSurpriseInterval).toEqual({ low: 34, high: 41 });
  });

  test('a card whose surprise was given back in full held none', () => {
    expect(ofSize(5, odds(cards(5, 2, [0, 3]))).withSurprise).toBe(1);
  });

  test('little history ends where the interval of a share near one half is at most 50 points wide', () => {
    const width = (n: number): number => {
      const { low, high } = wilsonInterval(Math.floor(n / 2), n) as Interval;
      return high - low;
    };
    expect(width(LITTLE_HISTORY_CARDS)).toBeLessThanOrEqual(0.5);
    expect(width(LITTLE_HISTORY_CARDS - 1)).toBeGreaterThan(0.5);
  });

  test('every share lies within 0 to 1, and within its interval', () => {
    fc.assert(
      fc.property(anyCards, (history) => {
        const { sizes } = odds(history, [21]);
        for (const size of sizes) {
          expect(size.likelyInterval.low).toBeGreaterThanOrEqual(0);
          expect(size.likelyInterval.low).toBeLessThanOrEqual(size.likelyShare);
          expect(size.likelyShare).toBeLessThanOrEqual(size.likelyInterval.high);
          expect(size.likelyInterval.high).toBeLessThanOrEqual(1);
        }
        expect(sizes.reduce((sum, size) => sum + size.cards, 0)).toBe(history.length);
      }),
      { seed: 20261112, numRuns: 25 },
    );
  });

  test('do not exist without a closed card', () => {
    expect(surpriseOdds([], [5])).toEqual({ undefined: { code: 'no-closed-card' } });
  });
});
