import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type LaterPart,
  laterPace,
  type PacedSprint,
  pacedVelocity,
  paceShare,
} from '../../src/forecast/paced-velocity.ts';
import { plannedAndProjected, planShare } from '../../src/forecast/planned-and-projected.ts';
import { NO_HISTORY, projectVelocity, withEndedSprints } from '../../src/forecast/project-velocity.ts';

const part = (workedPoints: number, more: Partial<LaterPart> = {}): LaterPart => ({
  workedPoints,
  evenPoints: workedPoints,
  openPoints: workedPoints + 2,
  hadTimeToSpare: false,
  isWatched: true,
  ...more,
});
const NOW: PacedSprint = { cardPoints: 20, finishedPoints: 8, underwayPoints: 2, plannedOpenPoints: 12 };
/** A velocity of 14 or 20 points, as likely. */
const TWO_ENDS = { cdf: (points: number) => (points < 14 ? 0 : points < 20 ? 0.5 : 1) };

describe('the pace of the time that is left', () => {
  test('isn’t known with fewer than three past sprints that show it', () => {
    const nothing = part(0, { hadTimeToSpare: true });
    for (const later of [[], [part(9), part(11)], [nothing, nothing, nothing, part(10)]]) {
      expect(laterPace(later)).toBeUndefined();
    }
  });

  test('time to spare speaks for more than was finished, and no less than at an even pace', () => {
    const chance = (later: readonly LaterPart[]): number => laterPace(later)?.atLeast(5) as number;
    const spare = (points: number, evenPoints: number): LaterPart =>
      part(points, { evenPoints, hadTimeToSpare: true });
    expect(chance([spare(4, 4), spare(5, 5), spare(4, 4)])).toBeGreaterThan(
      chance([part(4), part(5), part(4)]),
    );
    expect(chance([spare(4, 8), spare(5, 8), spare(4, 8)])).toBeGreaterThan(0.9);
  });

  test('knows the most that was ever open', () => {
    expect(laterPace([part(9), part(14), part(11)])?.mostOpenPoints).toBe(16);
  });
});

describe('projection and pace together', () => {
  test('without a pace it is the projection', () => {
    expect(pacedVelocity(TWO_ENDS, NOW, undefined, 0.2)).toBe(TWO_ENDS);
  });

  test('each speaks by its share, and the work for the open cards is less by what is underway', () => {
    // All 12 open points take 10 points of work, and half of them 5.
    const pace = {
      atLeast: (points: number) => Math.max(0, 1 - points / 20),
      mostOpenPoints: 12,
      watchedShare: 1,
    };
    const { cdf } = pacedVelocity(TWO_ENDS, NOW, pace, 0.2);
    expect(1 - cdf(19.5)).toBeCloseTo(0.8 * 0.5 + 0.2 * (1 - 10 / 20), 12);
    expect(1 - cdf(13.5)).toBeCloseTo(0.8 + 0.2 * (1 - 5 / 20), 12);
    expect(cdf(7.5)).toBe(0);
  });

  test('the pace speaks the less, the fewer of its sprints were watched, for the projection takes the others to have gone evenly', () => {
    const pace = { atLeast: () => 1, mostOpenPoints: 12, watchedShare: 0.25 };
    expect(pacedVelocity({ cdf: () => 1 }, NOW, pace, 0.2).cdf(19.5)).toBeCloseTo(0.95, 12);
    const parts = [part(9), part(9, { isWatched: false }), part(9, { isWatched: false }), part(8)];
    expect(laterPace(parts)?.watchedShare).toBe(0.5);
  });

  test('beyond the most that was ever open, or is of the commitment, the projection’s chance goes on by the pace', () => {
    const pace = {
      atLeast: (points: number) => Math.max(0, 1 - points / 40),
      mostOpenPoints: 4,
      watchedShare: 1,
    };
    const sprint = { cardPoints: 20, finishedPoints: 0, underwayPoints: 0, plannedOpenPoints: 10 };
    const always = { cdf: (points: number) => Number(points >= 20) };
    const chance = (points: number): number => 1 - pacedVelocity(always, sprint, pace, 0).cdf(points - 0.5);
    expect(chance(10)).toBe(1);
    expect(chance(20)).toBeCloseTo(20 / 30, 12);
  });

  test('the chance rises from 0 to 1, for every history', () => {
    const anyPart = fc.record({
      workedPoints: fc.integer({ min: 0, max: 40 }),
      evenPoints: fc.integer({ min: 0, max: 40 }),
      openPoints: fc.integer({ min: 0, max: 60 }),
      hadTimeToSpare: fc.boolean(),
      isWatched: fc.boolean(),
    });
    fc.assert(
      fc.property(
        fc.array(anyPart, { maxLength: 12 }),
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 0, max: 40 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (later, finishedPoints, openPoints, underwayShare) => {
          const now = {
            cardPoints: finishedPoints + openPoints,
            finishedPoints,
            underwayPoints: underwayShare * openPoints,
            plannedOpenPoints: openPoints / 2,
          };
          const { distribution } = projectVelocity(NO_HISTORY, 'a', now);
          const { cdf } = pacedVelocity(distribution, now, laterPace(later), 0.2);
          const chances = Array.from({ length: 200 }, (_, i) => cdf(i / 2 - 0.5));
          for (const [i, chance] of chances.entries()) {
            expect(chance).toBeGreaterThanOrEqual((chances[i - 1] ?? 0) - 1e-12);
            expect(chance).toBeLessThanOrEqual(1 + 1e-12);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  test('planning and pace together speak for a fifth at least, and the planning alone while it speaks for more', () => {
    expect([0, 0.1, 0.2, 0.5].map(paceShare)).toEqual([0.2, expect.closeTo(0.1 / 0.9, 12), 0, 0]);
    expect(paceShare(planShare(0))).toBe(0);
    const none = { cdf: () => 0 };
    const all = { cdf: () => 1 };
    const pace = { atLeast: () => 1, mostOpenPoints: 20, watchedShare: 1 };
    const sprint = { ...NOW, finishedPoints: 0, underwayPoints: 0 };
    for (const elapsedShare of [0.3, 0.5, 1]) {
      const paced = pacedVelocity(all, sprint, pace, paceShare(planShare(elapsedShare)));
      const { cdf } = plannedAndProjected(paced, none, { finishedPoints: 0, elapsedShare });
      expect(cdf(10)).toBeCloseTo(0.8, 12);
    }
  });
});

test('a steady team that pulls in as much as a sprint holds isn’t told that it may well finish all of it', () => {
  const elapsedShare = 0.8;
  const velocities = [18, 20, 16, 20, 14, 20, 19, 20];
  const history = velocities.reduce((known, velocityPoints) => {
    const soFar = { cardPoints: 20, finishedPoints: Math.round(0.8 * velocityPoints), underwayPoints: 0 };
    return withEndedSprints(known, [{ team: 'a', soFar, velocityPoints }]);
  }, NO_HISTORY);
  const later = velocities.map((velocity) => ({
    workedPoints: velocity - Math.round(elapsedShare * velocity),
    evenPoints: (1 - elapsedShare) * velocity,
    openPoints: 20 - Math.round(elapsedShare * velocity),
    hadTimeToSpare: velocity === 20,
    isWatched: true,
  }));
  const now = { cardPoints: 40, finishedPoints: 16, underwayPoints: 0, plannedOpenPoints: 4 };
  const { distribution } = projectVelocity(history, 'a', now);
  const { cdf } = pacedVelocity(distribution, now, laterPace(later), paceShare(0));
  expect(1 - distribution.cdf(39.5)).toBeGreaterThan(0.3);
  expect(1 - cdf(39.5)).toBeLessThan(0.05);
});
