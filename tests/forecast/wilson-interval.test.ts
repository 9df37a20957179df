import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Interval } from '../../src/forecast/points-distribution.ts';
import { wilsonInterval } from '../../src/forecast/wilson-interval.ts';
import { spreadsheet } from './spreadsheet.ts';

function wilson(successes: number, trials: number, confidence?: number): Interval {
  return wilsonInterval(successes, trials, confidence) as Interval;
}

const anyCount = fc
  .integer({ min: 1, max: 500 })
  .chain((trials) => fc.tuple(fc.integer({ min: 0, max: trials }), fc.constant(trials)));

describe('the interval of a share', () => {
  // Newcombe 1998, Statistics in Medicine 17, Table I (transcribed in public files, recomputed).
  test.each<[number, number, number, number]>([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('of %i in %i is the published one', (k, n, low, high) => {
    expect(wilson(k, n).low).toBeCloseTo(low, 4);
    expect(wilson(k, n).high).toBeCloseTo(high, 4);
  });

  test('of 37 in 43 is the published one', () => {
    // Documentation of R's binomial intervals (primary text read).
    expect(wilson(37, 43).low).toBeCloseTo(0.7273641, 7);
    expect(wilson(37, 43).high).toBeCloseTo(0.9344428, 7);
  });

  test('has a lower end that at 90% is the published one-sided 95% bound of 26 in 200', () => {
    // NIST/SEMATECH e-Handbook, 7.2.4.1 (prc241; primary text read): p = 0.13, n = 200.
    expect(wilson(26, 200, 0.9).low).toBeCloseTo(0.09577, 5);
  });

  test('solves the score equation, by a spreadsheet engine to 1e-9', () => {
    // Independent of the closed form: at both ends |seen − true| = z·√(true·(1 − true)/n).
    const cases = fc.sample(anyCount, { seed: 20261107, numRuns: 100 }).filter(([k, n]) => k > 0 && k < n);
    const atEnd = ([k, n]: readonly [number, number], end: number): string =>
      `ABS(${k}/${n}-${end})-NORM.S.INV(0.975)*SQRT(${end}*(1-${end})/${n})`;
    const gaps = spreadsheet(
      cases.flatMap((one) => [atEnd(one, wilson(...one).low), atEnd(one, wilson(...one).high)]),
    );
    expect(gaps.length).toBeGreaterThan(150);
    for (const gap of gaps) expect(Math.abs(gap)).toBeLessThan(1e-9);
  });

  test('holds the share seen, lies within 0 to 1, and mirrors when failures are counted', () => {
    fc.assert(
      fc.property(anyCount, ([k, n]) => {
        const { low, high } = wilson(k, n);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(low).toBeLessThanOrEqual(k / n);
        expect(high).toBeGreaterThanOrEqual(k / n);
        expect(high).toBeLessThanOrEqual(1);
        expect(wilson(n - k, n).low).toBeCloseTo(1 - high, 12);
      }),
      { seed: 20261108 },
    );
  });

  test('narrows with history', () => {
    const widths = [10, 40, 160].map((n) => wilson(n / 5, n).high - wilson(n / 5, n).low);
    expect(widths).toEqual(widths.toSorted((a, b) => b - a));
    expect(new Set(widths).size).toBe(3);
  });

  test('holds the true share in about 95% of cases, averaged over shares', () => {
    const n = 20;
    const shares = Array.from({ length: 99 }, (_, i) => (i + 1) / 100);
    const chance = (p: number): number => {
      let [covered, term] = [0, (1 - p) ** n];
      for (let k = 0; k <= n; k += 1) {
        if (wilson(k, n).low <= p && p <= wilson(k, n).high) covered += term;
        term *= (((n - k) / (k + 1)) * p) / (1 - p);
      }
      return covered;
    };
    const mean = shares.reduce((sum, p) => sum + chance(p), 0) / shares.length;
    expect(mean).toBeGreaterThan(0.94);
    expect(mean).toBeLessThan(0.96);
  });

  test('does not exist without a trial', () => {
    expect(wilsonInterval(0, 0)).toEqual({ undefined: { code: 'nothing-to-count' } });
  });

  test.each([
    [3, 2, 0.95],
    [-1, 2, 0.95],
    [1, 2, 1],
  ])('is refused for %i in %i at %s', (k, n, confidence) => {
    expect(() => wilsonInterval(k, n, confidence)).toThrow(RangeError);
  });
});
