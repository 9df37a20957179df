import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { carriedOutcome } from '../../src/forecast/carried-outcome.ts';
import { likeness, traitsOf } from '../../src/forecast/sprint-likeness.ts';
import { anySoFar, soFar } from './sprints-so-far.ts';

describe('what a past sprint’s end says about this one', () => {
  const now = soFar(20, 6);

  test.each([
    ['the same share of the open work gets finished', soFar(10, 4), 7, 13],
    ['all of it, where all of it was', soFar(10, 4), 10, 20],
    ['none of it, where none was', soFar(10, 4), 4, 6],
    ['as many points beyond, where more was finished than was in it', soFar(10, 4), 13, 23],
    ['the same share of the finished, where cards were reopened', soFar(10, 4), 2, 3],
    ['everything, where everything was finished already', soFar(10, 10), 10, 20],
    ['nothing more, where there was nothing', soFar(0, 0), 0, 6],
    ['the share of the whole, where only its start is known', { cardPoints: 10, elapsedShare: 0.5 }, 7, 14],
    ['but not less than is finished, there', { cardPoints: 10, elapsedShare: 0.5 }, 1, 6],
    ['amounts are rounded to half a point', soFar(10, 4), 5, 8.5],
  ])('%s', (_, past, velocity, expected) => {
    expect(carriedOutcome(past, velocity, now)).toBe(expected);
  });

  test('a sprint carried over to itself comes out as it did', () => {
    fc.assert(
      fc.property(anySoFar, fc.integer({ min: 0, max: 120 }), (sprint, half) => {
        fc.pre(sprint.finishedPoints < sprint.cardPoints || sprint.finishedPoints <= half / 2);
        expect(carriedOutcome(sprint, half / 2, sprint)).toBe(half / 2);
      }),
    );
  });

  test('it is a multiple of half a point and never below 0', () => {
    fc.assert(
      fc.property(anySoFar, anySoFar, fc.integer({ min: 0, max: 120 }), (past, today, half) => {
        const outcome = carriedOutcome(past, half / 2, today);
        expect(outcome).toBeGreaterThanOrEqual(0);
        expect(Number.isInteger(outcome * 2)).toBe(true);
      }),
    );
  });
});

describe('likeness', () => {
  test('is 1 for sprints in the same state and the same either way round', () => {
    fc.assert(
      fc.property(anySoFar, anySoFar, (a, b) => {
        expect(likeness(traitsOf(a), traitsOf(a))).toBe(1);
        const there = likeness(traitsOf(a), traitsOf(b));
        expect(there).toBe(likeness(traitsOf(b), traitsOf(a)));
        expect(there).toBeGreaterThanOrEqual(0);
        expect(there).toBeLessThanOrEqual(1);
      }),
    );
  });

  test('falls as the sizes, the finished or the underway shares part', () => {
    const from = (other: ReturnType<typeof soFar>): number =>
      likeness(traitsOf(soFar(20, 5, 5)), traitsOf(other));
    expect(from(soFar(30, 7.5, 7.5))).toBeGreaterThan(from(soFar(60, 15, 15)));
    expect(from(soFar(20, 7, 5))).toBeGreaterThan(from(soFar(20, 12, 5)));
    expect(from(soFar(20, 5, 8))).toBeGreaterThan(from(soFar(20, 5, 14)));
  });

  test('a difference of one step leaves (1 + ¼)⁻²', () => {
    expect(likeness(traitsOf(soFar(20, 6, 0)), traitsOf(soFar(20, 6, 6)))).toBeCloseTo(0.64, 12);
  });

  test('with a sprint of which only the start is known, each unknown share counts as one step', () => {
    expect(likeness(traitsOf(soFar(20, 5, 5)), traitsOf({ cardPoints: 20, elapsedShare: 0.5 }))).toBeCloseTo(
      4 / 9,
      12,
    );
  });
});
