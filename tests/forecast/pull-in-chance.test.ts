import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PulledInCard } from '../../src/forecast/pull-in-chance.ts';
import { pullInChance, pullInRecord } from '../../src/forecast/pull-in-chance.ts';
import type { WorkChance } from '../../src/forecast/whole-cards.ts';
import { wilsonInterval } from '../../src/forecast/wilson-interval.ts';

/** Each of these amounts can still be finished with the same chance. */
function oneOf(...points: number[]): WorkChance {
  return (least) => points.filter((value) => value >= least).length / points.length;
}

const anyChance = fc
  .array(
    fc.integer({ min: 0, max: 60 }).map((n) => n / 2),
    { minLength: 1, maxLength: 20 },
  )
  .map((points) => oneOf(...points));
const anyPoints = fc.integer({ min: 0, max: 40 }).map((n) => n / 2);

describe('the chance that a card pulled in gets finished', () => {
  test('is the chance that as much can still be finished as lies ahead and the card holds', () => {
    const can = oneOf(2, 4, 6, 8, 10);
    expect(pullInChance({ estimatePoints: 3, aheadPoints: 4, surprise: undefined }, can)).toEqual({
      afterOpenWork: 0.4,
      doneFirst: 0.8,
    });
  });

  test('an amount that is just enough is enough', () => {
    const card = { estimatePoints: 5, aheadPoints: 3, surprise: undefined };
    expect(pullInChance(card, oneOf(8)).afterOpenWork).toBe(1);
    expect(pullInChance(card, oneOf(7.5)).afterOpenWork).toBe(0);
  });

  test('weighs in that the card may hold surprise work', () => {
    const can = oneOf(2, 4, 6, 8, 10);
    const card = { estimatePoints: 3, aheadPoints: 0, surprise: { share: 0.25, points: 4 } };
    // 3 points: 0.8; 7 points: 0.4.
    expect(pullInChance(card, can).doneFirst).toBeCloseTo(0.75 * 0.8 + 0.25 * 0.4, 12);
  });

  test('a card of 0 points with nothing ahead is finished', () => {
    const card = { estimatePoints: 0, aheadPoints: 0, surprise: undefined };
    expect(pullInChance(card, oneOf(0))).toEqual({ afterOpenWork: 1, doneFirst: 1 });
  });

  test('never rises with the size, the work ahead or the odds of surprise, and stays within 0 to 1', () => {
    fc.assert(
      fc.property(
        anyChance,
        anyPoints,
        anyPoints,
        anyPoints,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (can, size, ahead, more, share) => {
          const chance = (estimatePoints: number, aheadPoints: number, odds: number): number =>
            pullInChance({ estimatePoints, aheadPoints, surprise: { share: odds, points: 2 } }, can)
              .afterOpenWork;
          const plain = chance(size, ahead, share);
          expect(plain).toBeGreaterThanOrEqual(0);
          expect(plain).toBeLessThanOrEqual(1);
          expect(chance(size + more, ahead, share)).toBeLessThanOrEqual(plain + 1e-12);
          expect(chance(size, ahead + more, share)).toBeLessThanOrEqual(plain + 1e-12);
          expect(chance(size, ahead, 1)).toBeLessThanOrEqual(plain + 1e-12);
        },
      ),
      { seed: 20261118 },
    );
  });
});

function pulledIn(estimatePoints: number, workingDaysLeft: number, finished: boolean): PulledInCard {
  return { estimatePoints, workingDaysLeft, finished };
}

describe('the record of cards pulled in', () => {
  const small = [true, true, true, true, false].map((finished) => pulledIn(2, 4, finished));
  const large = [false, false, false, false, false, true].map((finished) => pulledIn(8, 2, finished));

  test('counts the cards with half to twice as much work a day left', () => {
    expect(pullInRecord([...small, ...large], 1, 2)).toEqual({
      finished: 4,
      cards: 5,
      share: 0.8,
      interval: wilsonInterval(4, 5),
      comparable: true,
    });
    expect(pullInRecord([...small, ...large], 5, 1)).toMatchObject({
      finished: 1,
      cards: 6,
      comparable: true,
    });
  });

  test('takes all cards where too few compare, and says so', () => {
    expect(pullInRecord([...small, ...large], 13, 0.5)).toMatchObject({ cards: 11, comparable: false });
  });

  test('says what is missing below five cards', () => {
    expect(pullInRecord(small.slice(1), 2, 3)).toEqual({
      undefined: { code: 'few-pulled-in', needed: 5, known: 4 },
    });
  });

  test('says so when no working day is left', () => {
    expect(pullInRecord(small, 2, 0)).toEqual({ undefined: { code: 'no-day-for-card', estimatePoints: 2 } });
  });
});
