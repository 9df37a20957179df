import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { censoredPredictive } from '../../src/forecast/censored-predictive.ts';
import type { Interval } from '../../src/forecast/points-distribution.ts';
import { withSeenAmounts } from '../../src/forecast/seen-amounts.ts';
import { weightedPoints } from '../../src/forecast/weighted-points.ts';
import { seededRandom } from './seeded-random.ts';

const MODEL = weightedPoints([10, 20, 30, 40], [1, 1, 1, 1]);

function known(...values: number[]): Interval[] {
  return values.map((value) => ({ low: value, high: value }));
}

test('without amounts the model is left as it is', () => {
  const { cdf, quantile } = withSeenAmounts(MODEL, []);
  expect([0, 10, 25, 39, 40].map(cdf)).toEqual([0, 0.25, 0.5, 0.75, 1]);
  expect(quantile(0.4)).toBeCloseTo(20, 6);
});

test('equal amounts count one each, and the model as six', () => {
  const { cdf } = withSeenAmounts(MODEL, known(25, 25, 25));
  expect(cdf(24.5)).toBeCloseTo((6 * 0.5) / 9, 12);
  expect(cdf(25)).toBeCloseTo((6 * 0.5 + 3) / 9, 12);
});

describe('of an amount that is only bounded the model says where it lies', () => {
  test.each<[string, Interval, number]>([
    ['at least 20', { low: 20, high: Number.POSITIVE_INFINITY }, (6 * 0.75 + 0.5) / 7],
    ['at most 30', { low: 0, high: 30 }, (6 * 0.75 + 1) / 7],
    ['from 10 to 40', { low: 10, high: 40 }, (6 * 0.75 + 2 / 3) / 7],
    ['above all that the model thinks possible', { low: 90, high: Number.POSITIVE_INFINITY }, (6 * 0.75) / 7],
  ])('%s', (_, bounds, chance) => {
    expect(withSeenAmounts(MODEL, [bounds]).cdf(30)).toBeCloseTo(chance, 12);
  });
});

test('different amounts are smoothed by Silverman’s rule: two roots of 4 and 5, with a spread of 0.5 ÷ 1.349', () => {
  // By hand: 0.9 · 0.5 ÷ 1.349 · 2^(−1/5) = 0.2904; at 20.25 points the roots are as far below as above.
  const { cdf } = withSeenAmounts(MODEL, known(16, 25));
  expect(cdf(20.25)).toBeCloseTo((6 * 0.5 + 1) / 8, 12);
  // One deviation beyond 4: the normal distribution's 84.13% (any table), and a hair of the one around 5.
  expect(cdf((4 + 0.2904) ** 2)).toBeCloseTo((6 * 0.25 + 0.8413 + 0.0073) / 8, 3);
});

test('the quantile is where the chance is reached, and no chance of 1 is asked for', () => {
  const intervals = fc.array(
    fc.tuple(fc.integer({ min: 0, max: 60 }), fc.constantFrom(0, 5, Number.POSITIVE_INFINITY)),
    { minLength: 1, maxLength: 8 },
  );
  fc.assert(
    fc.property(intervals, fc.double({ min: 0.01, max: 0.98, noNaN: true }), (bounds, chance) => {
      const seen = bounds.map(([low, more]) => ({ low, high: low + more }));
      const { cdf, quantile } = withSeenAmounts(
        censoredPredictive([], { centrePoints: 20, levelSpread: 0.7 }),
        seen,
      );
      const at = quantile(chance);
      expect(cdf(at)).toBeGreaterThanOrEqual(chance - 1e-9);
      if (at > 0) expect(cdf(at * (1 - 1e-6) - 1e-6)).toBeLessThanOrEqual(chance + 1e-6);
    }),
    { numRuns: 60 },
  );
  expect(() => withSeenAmounts(MODEL, []).quantile(1)).toThrow(RangeError);
});

test('of teams that finish nothing in most sprints, the chance that the model alone tells far too low is told less low', () => {
  const random = seededRandom(7);
  const told = { model: 0, both: 0 };
  let came = 0;
  const teams = 400;
  const amount = () => (random.uniform() < 0.65 ? 0 : Math.max(1, Math.round(20 + 3 * random.normal())));
  for (let team = 0; team < teams; team += 1) {
    const seen = known(...Array.from({ length: 12 }, amount));
    const model = censoredPredictive(seen, { centrePoints: 20, levelSpread: 0.7 });
    told.model += 1 - model.cdf(15.75);
    told.both += 1 - withSeenAmounts(model, seen).cdf(15.75);
    came += Number(amount() >= 16);
  }
  const off = (chances: number) => Math.abs(chances - came) / teams;
  expect(off(told.model)).toBeGreaterThan(0.15);
  expect(off(told.both)).toBeLessThan(0.65 * off(told.model));
});
