import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { EndedCard, OpenCard } from '../../src/forecast/card-evenings.ts';
import { cardChance, cardProjection } from '../../src/forecast/card-projection.ts';

const CARD: OpenCard = {
  estimatePoints: 3,
  leftPoints: 3,
  isBegun: false,
  unmovedDays: 0,
  isBlocked: false,
  queuePoints: 4,
};

function ended(change: Partial<OpenCard>, finished: number, of: number): EndedCard[] {
  return Array.from({ length: of }, (_, i) => ({ ...CARD, ...change, isFinished: i < finished }));
}

describe('the chance of a card', () => {
  test('is what the sums expect where no card is known', () => {
    expect(cardChance([], CARD, 0.6)).toBeCloseTo(0.6, 12);
  });

  test('is the share of cards just like it that were finished, beside three that go as the sums expect', () => {
    expect(cardChance(ended({}, 9, 12), CARD, 0.5)).toBeCloseTo((9 + 1.5) / 15, 12);
  });

  test.each<[string, Partial<OpenCard>]>([
    ['large', { leftPoints: 13 }],
    ['left lying', { unmovedDays: 6 }],
    ['blocked', { isBlocked: true }],
    ['behind a long queue', { queuePoints: 30 }],
  ])('a card that is %s goes by those that were', (_, change) => {
    const past = [...ended({}, 18, 20), ...ended(change, 2, 20)];
    expect(cardChance(past, { ...CARD, ...change }, 0.5)).toBeLessThan(cardChance(past, CARD, 0.5));
  });
});

describe('the points finished by the end', () => {
  test('are sums of whole cards', () => {
    const { points } = cardProjection([], {
      finishedPoints: 4,
      open: [
        { ...CARD, estimatePoints: 5 },
        { ...CARD, estimatePoints: 8 },
      ],
      finishShare: 0.5,
    });
    expect([...points]).toEqual([4, 9, 12, 17]);
  });

  const anyOpen = fc.array(
    fc
      .integer({ min: 1, max: 26 })
      .map((halves): OpenCard => ({ ...CARD, estimatePoints: halves / 2, leftPoints: halves / 2 })),
    { maxLength: 7 },
  );

  test('agree with all ways in which the cards may end, counted one by one', () => {
    fc.assert(
      fc.property(anyOpen, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (open, finishShare) => {
        const projection = cardProjection([], { finishedPoints: 2, open, finishShare });
        const odds = finishShare / (1 - finishShare);
        const counted = new Map<number, number>();
        // Gauss and Hermite's rule of three nodes, Abramowitz and Stegun 25.4.46 for a standard normal deviate.
        for (const [node, weight] of [
          [-Math.sqrt(3), 1 / 6],
          [0, 2 / 3],
          [Math.sqrt(3), 1 / 6],
        ] as const) {
          const shifted = odds * Math.exp(0.5 * node);
          const chance = shifted / (1 + shifted);
          for (let way = 0; way < 2 ** open.length; way += 1) {
            let points = 2;
            let likely = weight;
            for (const [i, card] of open.entries()) {
              const isFinished = ((way >> i) & 1) === 1;
              if (isFinished) points += card.estimatePoints;
              likely *= isFinished ? chance : 1 - chance;
            }
            counted.set(points, (counted.get(points) ?? 0) + likely);
          }
        }
        for (const [i, points] of projection.points.entries()) {
          expect(projection.chances[i]).toBeCloseTo(counted.get(points) ?? 0, 10);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('are what is finished when nothing is open', () => {
    expect([...cardProjection([], { finishedPoints: 7, open: [], finishShare: 0.5 }).points]).toEqual([7]);
  });
});
