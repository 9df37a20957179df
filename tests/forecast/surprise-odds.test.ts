import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { betaBinomialFit } from '../../src/forecast/beta-binomial-fit.ts';
import type { BetaParameters } from '../../src/forecast/beta-distribution.ts';
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
    expect(three).toMatchObject({ borrows: false, ownShare: 0.2, likelyShare: 0.2 });
    expect(three.likelyInterval).toEqual(wilsonInterval(4, 20));
  });

  test('a size with little history borrows: (α + with surprise) ÷ (α + β + cards)', () => {
    const table = odds(HISTORY);
    const { alpha, beta } = betaBinomialFit([
      { trials: 30, successes: 2 },
      { trials: 20, successes: 4 },
      { trials: 13, successes: 4 },
      { trials: 4, successes: 3 },
      { trials: 1, successes: 1 },
    ]) as BetaParameters;
    const eight = ofSize(8, table);
    expect(eight).toMatchObject({ borrows: true, ownShare: 0.75 });
    expect(eight.likelyShare).toBeCloseTo((alpha + 3) / (alpha + beta + 4), 9);
    expect(eight.borrowedShare).toBeCloseTo((alpha + beta) / (alpha + beta + 4), 9);
  });

  test('one card out of one is no certainty', () => {
    const thirteen = ofSize(13, odds(HISTORY));
    expect(thirteen.ownShare).toBe(1);
    expect(thirteen.likelyShare).toBeLessThan(0.5);
    expect(thirteen.likelyShare).toBeGreaterThan(14 / 68);
    expect(thirteen.borrowedShare).toBeGreaterThan(0.8);
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
      borrowedShare: 1,
      ownShare: none,
      ownInterval: none,
      medianSurprisePoints: none,
    });
    expect(twentyOne.likelyShare).toBeCloseTo(table.prior.alpha / (table.prior.alpha + table.prior.beta), 12);
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

  test('every share lies within 0 to 1 and its interval, drawn from its own towards the others', () => {
    fc.assert(
      fc.property(anyCards, (history) => {
        const { sizes, prior } = odds(history);
        const common = prior.alpha / (prior.alpha + prior.beta);
        for (const size of sizes) {
          const own = size.ownShare as number;
          expect(size.shrunkShare).toBeGreaterThanOrEqual(Math.min(own, common) - 1e-12);
          expect(size.shrunkShare).toBeLessThanOrEqual(Math.max(own, common) + 1e-12);
          expect(size.likelyInterval.low).toBeGreaterThanOrEqual(0);
          expect(size.likelyInterval.low).toBeLessThanOrEqual(size.likelyInterval.high);
          expect(size.likelyInterval.high).toBeLessThanOrEqual(1);
        }
        expect(sizes.reduce((sum, size) => sum + size.cards, 0)).toBe(history.length);
      }),
      { seed: 20261112, numRuns: 40 },
    );
  });

  test('do not exist without a closed card', () => {
    expect(surpriseOdds([], [5])).toEqual({ undefined: { code: 'no-closed-card' } });
  });
});
