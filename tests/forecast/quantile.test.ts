import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { QuantileType } from '../../src/forecast/quantile.ts';
import { median, quantile } from '../../src/forecast/quantile.ts';
import { spreadsheet } from './spreadsheet.ts';

/** NIST/SEMATECH e-Handbook, 7.2.6.2 (prc262): resistivity of twelve wafers. */
const WAFERS = [
  95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.061, 95.1591, 95.1195, 95.1065, 95.0925, 95.199, 95.1682,
];

const someNumbers = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 1, maxLength: 30 });
const anyShare = fc.double({ min: 0, max: 1, noNaN: true });
const anyType = fc.constantFrom<QuantileType>(6, 7, 8);

describe('a quantile', () => {
  // R's own nine types for {1, 2, 3, 4}, after Hyndman and Fan 1996 (primary text read, R-generated).
  test.each<[QuantileType, number, number]>([
    [6, 1.25, 3.75],
    [7, 1.75, 3.25],
    [8, 1.41667, 3.58333],
  ])('of type %i has the published quartiles of 1, 2, 3, 4', (type, lower, upper) => {
    expect(quantile([1, 2, 3, 4], 0.25, type)).toBeCloseTo(lower, 5);
    expect(quantile([1, 2, 3, 4], 0.75, type)).toBeCloseTo(upper, 5);
  });

  test.each<[QuantileType, number]>([
    [6, 95.19807],
    [7, 95.19568],
    [8, 95.19724],
  ])('of type %i has the published 90%% point of NIST’s wafers', (type, expected) => {
    expect(quantile(WAFERS, 0.9, type)).toBeCloseTo(expected, 5);
  });

  test('agrees with a spreadsheet engine to 1e-9: type 7 is PERCENTILE.INC, type 6 PERCENTILE.EXC', () => {
    const cases = fc.sample(
      fc.tuple(
        fc.array(fc.integer({ min: -500, max: 500 }), { minLength: 9, maxLength: 20 }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
      ),
      { seed: 20261105, numRuns: 100 },
    );
    const array = (values: readonly number[]): string => `{${values.join(',')}}`;
    const inclusive = spreadsheet(
      cases.map(([values, share]) => `PERCENTILE.INC(${array(values)},${share})`),
    );
    const exclusive = spreadsheet(
      cases.map(([values, share]) => `PERCENTILE.EXC(${array(values)},${share})`),
    );
    for (const [i, [values, share]] of cases.entries()) {
      expect(Math.abs((quantile(values, share) as number) - (inclusive[i] as number))).toBeLessThan(1e-9);
      expect(Math.abs((quantile(values, share, 6) as number) - (exclusive[i] as number))).toBeLessThan(1e-9);
    }
  });

  test('never falls as the share rises, never leaves the values, and knows no order', () => {
    fc.assert(
      fc.property(someNumbers, anyShare, anyShare, anyType, (values, one, other, type) => {
        const at = (share: number): number => quantile(values, share, type) as number;
        expect(at(Math.min(one, other))).toBeLessThanOrEqual(at(Math.max(one, other)));
        expect(at(one)).toBeGreaterThanOrEqual(Math.min(...values));
        expect(at(one)).toBeLessThanOrEqual(Math.max(...values));
        expect(quantile(values.toReversed(), one, type)).toBe(at(one));
      }),
      { seed: 20261106 },
    );
  });

  test('of one value is that value', () => {
    expect([quantile([7], 0), quantile([7], 0.4, 6), quantile([7], 1, 8)]).toEqual([7, 7, 7]);
  });

  test('of nothing does not exist', () => {
    expect(quantile([], 0.5)).toEqual({ undefined: { code: 'no-values' } });
    expect(median([])).toEqual({ undefined: { code: 'no-values' } });
  });

  test.each([-0.1, 1.1, Number.NaN])('takes a share from 0 to 1, not %s', (share) => {
    expect(() => quantile([1, 2], share)).toThrow(RangeError);
  });

  test('leaves the list as it was', () => {
    const values = [3, 1, 2];
    median(values);
    expect(values).toEqual([3, 1, 2]);
  });
});
