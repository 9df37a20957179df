import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { weightedPoints } from '../../src/forecast/weighted-points.ts';
import {
  chanceToGetThrough,
  pointsUntil,
  type QueuedCard,
  workChance,
} from '../../src/forecast/whole-cards.ts';

const committed = (...sizes: number[]): QueuedCard[] =>
  sizes.map((estimatePoints) => ({ estimatePoints, isCommitted: true, isBegun: false }));

/** Every order of the cards, the begun ones first. */
function orders(cards: readonly QueuedCard[]): QueuedCard[][] {
  if (cards.length === 0) return [[]];
  const hasBegun = cards.some(({ isBegun }) => isBegun);
  return cards.flatMap((card, i) =>
    hasBegun && !card.isBegun ? [] : orders(cards.toSpliced(i, 1)).map((rest) => [card, ...rest]),
  );
}

/** By going through the cards in every order. */
function countedUntil(cards: readonly QueuedCard[], missing: number): Map<number, number> {
  const counts = new Map<number, number>();
  const all = orders(cards);
  for (const order of all) {
    let [done, kept] = [0, 0];
    for (const { estimatePoints, isCommitted } of order) {
      done += estimatePoints;
      if (isCommitted) kept += estimatePoints;
      if (kept >= missing) break;
    }
    counts.set(done, (counts.get(done) ?? 0) + 1 / all.length);
  }
  return counts;
}

describe('how many points come before the missing ones are finished', () => {
  test('with 13 and 7 open and 16 missing it is all of them, in whatever order', () => {
    expect(pointsUntil(committed(13, 7), 16)?.points).toEqual(Float64Array.of(20));
  });

  test('is what going through every order counts (brute force)', () => {
    const card = fc.record({
      estimatePoints: fc.constantFrom(0, 0.5, 1, 2, 3, 5, 8, 13),
      isCommitted: fc.boolean(),
      isBegun: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(card, { maxLength: 6 }), fc.integer({ min: 1, max: 10 }), (cards, tenths) => {
        const total = cards
          .filter((one) => one.isCommitted)
          .reduce((sum, one) => sum + one.estimatePoints, 0);
        fc.pre(total > 0);
        const missing = Math.ceil((total * tenths * 2) / 10) / 2;
        const until = pointsUntil(cards, missing);
        const counted = countedUntil(cards, missing);
        for (const points of new Set([...counted.keys(), ...(until?.points ?? [])])) {
          const i = until?.points.indexOf(points) ?? -1;
          const chance = i < 0 ? 0 : (until?.chances[i] as number);
          expect(chance).toBeCloseTo(counted.get(points) ?? 0, 10);
        }
      }),
      { numRuns: 300 },
    );
  });

  test('is nothing when nothing is missing, and not to be reached when too little is left', () => {
    expect(pointsUntil(committed(5), 0)?.points).toEqual(Float64Array.of(0));
    expect(pointsUntil(committed(5, 3), 8.5)).toBeUndefined();
    expect(chanceToGetThrough(undefined, () => 1)).toBe(0);
  });

  test('takes 100 cards in less than 20 ms', () => {
    const sizes = [1, 2, 3, 5, 8, 13, 0.5, 1.5];
    const cards = Array.from({ length: 100 }, (_, i) => ({
      estimatePoints: sizes[i % sizes.length] as number,
      isCommitted: i % 5 !== 0,
      isBegun: i % 7 === 0,
    }));
    const total = cards.filter((one) => one.isCommitted).reduce((sum, one) => sum + one.estimatePoints, 0);
    // The thread's own time, so that a busy machine doesn't count.
    const times = Array.from({ length: 12 }, () => {
      const begin = process.threadCpuUsage();
      const until = pointsUntil(cards, total * 0.8);
      chanceToGetThrough(until, workChance({ cdf: (points) => Math.min(1, points / 500) }, [1, 5, 13]));
      return process.threadCpuUsage(begin).user / 1000;
    });
    expect(Math.min(...times)).toBeLessThan(20);
  });

  test('still answers for cards of hundreds of points', () => {
    const until = pointsUntil(committed(...Array.from({ length: 40 }, (_, i) => 999.5 - i)), 30_000);
    expect(until?.chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 12);
    expect(until?.meanPoints).toBeGreaterThan(29_990);
  });
});

describe('the chance to get through so much', () => {
  test('adds what was done on the card that was not finished', () => {
    const work = workChance(weightedPoints([10], [1]), [4]);
    expect([10, 11, 12, 13, 14].map(work)).toEqual([1, 0.75, 0.5, 0.25, 0]);
  });

  test('of everything is that of finishing everything, and of nothing is 1', () => {
    const finished = weightedPoints([0, 13, 16, 19.5, 20], [1, 1, 4, 2, 2]);
    const work = workChance(finished, [13, 7], 20);
    expect(work(20)).toBeCloseTo(0.2, 12);
    expect(work(0)).toBe(1);
  });

  test('gives back how much is finished where all cards are alike, whatever their number', () => {
    const finished = weightedPoints([0, 5, 10, 15, 20], [1, 2, 3, 3, 1]);
    const work = workChance(finished, [5, 5, 5, 5], 20);
    for (const points of [5, 10, 15, 20])
      expect(work(points)).toBeCloseTo(1 - finished.cdf(points - 0.5), 12);
  });

  test('never rises with the points', () => {
    const finished = weightedPoints([0, 3, 7.5, 11, 18, 22], [1, 2, 3, 1, 2, 1]);
    const work = workChance(finished, [1, 2, 8, 3, 8], 22);
    const chances = Array.from({ length: 60 }, (_, i) => work(i / 2));
    expect(chances).toEqual(chances.toSorted((a, b) => b - a));
  });
});
