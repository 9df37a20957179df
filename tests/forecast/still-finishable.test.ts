import { describe, expect, test } from 'vitest';
import type { LaterPart } from '../../src/forecast/still-finishable.ts';
import { stillFinishable } from '../../src/forecast/still-finishable.ts';

const NOW = { cardPoints: 20, finishedPoints: 8, underwayPoints: 2 };

/** A velocity of 14 or 20 points, as likely. */
const TWO_ENDS = { cdf: (points: number) => (points < 14 ? 0 : points < 20 ? 0.5 : 1) };

const full = (workedPoints: number): LaterPart => ({
  workedPoints,
  evenPoints: workedPoints,
  hadTimeToSpare: false,
});
const spare = (workedPoints: number, evenPoints = workedPoints): LaterPart => ({
  workedPoints,
  evenPoints,
  hadTimeToSpare: true,
});
const atLeast = (points: number, later: readonly LaterPart[], velocity = TWO_ENDS): number =>
  1 - stillFinishable(velocity, NOW, later).cdf(points - 0.25);

describe('what can still be finished', () => {
  test('is the projection less what is done, where no past sprint shows the pace', () => {
    // Of 12 open points 2 are underway, so that 10 points of work finish them all, and 5 half of them.
    for (const later of [[], [full(9), full(11)], [spare(0), spare(0), spare(0), full(10)]]) {
      expect(atLeast(5, later)).toBe(1);
      expect(atLeast(5.5, later)).toBe(0.5);
      expect(atLeast(10, later)).toBe(0.5);
      expect(atLeast(10.5, later)).toBe(0);
    }
  });

  test('beyond the open work goes on from the chance that the open work gets finished', () => {
    const later = [full(14), full(17), full(16), full(15)];
    expect(atLeast(10, later)).toBeGreaterThanOrEqual(0.5);
    expect(atLeast(11, later)).toBeGreaterThan(0.4);
    expect(atLeast(11, later)).toBeLessThanOrEqual(0.5);
    expect(atLeast(24, later)).toBeLessThan(0.05);
  });

  test('never rises with the points, for every history', () => {
    for (const later of [
      [full(3), full(4), full(2)],
      [spare(12), spare(9), full(20)],
      [full(0), full(1), full(2)],
    ]) {
      const chances = Array.from({ length: 80 }, (_, i) => atLeast(i / 2, later));
      for (const [i, chance] of chances.entries()) {
        expect(chance).toBeLessThanOrEqual(chances[i - 1] ?? 1);
        expect(chance).toBeGreaterThanOrEqual(0);
      }
    }
  });

  test('time to spare speaks for more than was finished, and no less than at an even pace', () => {
    const nothingOpen = { cardPoints: 8, finishedPoints: 8, underwayPoints: 0 };
    const chance = (later: readonly LaterPart[]): number =>
      1 - stillFinishable({ cdf: (points) => (points < 8 ? 0 : 1) }, nothingOpen, later).cdf(5);
    const asFinished = [full(4), full(5), full(4)];
    expect(chance([spare(4), spare(5), spare(4)])).toBeGreaterThan(chance(asFinished));
    expect(chance([spare(4, 8), spare(5, 8), spare(4, 8)])).toBeGreaterThan(0.9);
  });

  test('a sprint far beyond the team’s pace leaves the chances small instead of undefined', () => {
    const huge = { cardPoints: 900, finishedPoints: 0, underwayPoints: 0 };
    const cdf = stillFinishable({ cdf: (points) => (points < 10 ? 0 : 1) }, huge, [
      full(5),
      full(6),
      full(7),
    ]).cdf;
    expect(1 - cdf(901)).toBe(0);
    expect(1 - cdf(3)).toBeGreaterThan(0.9);
  });
});
