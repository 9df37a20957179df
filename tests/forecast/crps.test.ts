import fc from 'fast-check';
import { expect, test } from 'vitest';
import { crps } from '../../src/forecast/crps.ts';
import { normalQuantile } from '../../src/forecast/normal-distribution.ts';
import { weightedPoints } from '../../src/forecast/weighted-points.ts';

function alike(values: readonly number[]): ReturnType<typeof weightedPoints> {
  return weightedPoints(
    values,
    values.map(() => 1),
  );
}

test('the ensemble 0, 1, 3 at outcome 2 scores 2/3', () => {
  // Worked out in closed form: 4/3 − ½·4/3.
  expect(crps(alike([0, 1, 3]), 2)).toBeCloseTo(2 / 3, 12);
});

test.each([
  // CRPS of the standard normal distribution: φ-and-Φ closed form, Gneiting and Raftery 2007.
  [0, 0.2336949773],
  [1, 0.6024413576],
])('a fine cut of the standard normal distribution at outcome %s scores %s', (outcome, expected) => {
  const cut = Array.from({ length: 4000 }, (_, i) => normalQuantile((i + 0.5) / 4000));
  expect(crps(alike(cut), outcome)).toBeCloseTo(expected, 4);
});

test('a forecast of a single amount scores its absolute error', () => {
  expect(crps(alike([7]), 4.5)).toBe(2.5);
});

test('it is the mean distance to the outcome minus half the mean distance between two draws', () => {
  const anyPairs = fc.array(fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 1, max: 9 })), {
    minLength: 1,
    maxLength: 25,
  });
  fc.assert(
    fc.property(anyPairs, fc.integer({ min: 0, max: 60 }), (pairs, outcome) => {
      const whole = pairs.reduce((sum, [, weight]) => sum + weight, 0);
      let score = 0;
      for (const [x, w] of pairs) {
        score += (w / whole) * Math.abs(x - outcome);
        for (const [y, v] of pairs) score -= (0.5 * w * v * Math.abs(x - y)) / whole ** 2;
      }
      const distribution = weightedPoints(
        pairs.map(([x]) => x),
        pairs.map(([, w]) => w),
      );
      expect(crps(distribution, outcome)).toBeCloseTo(score, 9);
    }),
  );
});
