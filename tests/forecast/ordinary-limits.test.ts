import { describe, expect, test } from 'vitest';
import { controlChart, ordinaryLimits } from '../../src/forecast/control-chart.ts';
import { usualFact } from '../../src/words/charts/history.ts';

const limitsOf = (values: readonly number[]) => ordinaryLimits(controlChart(values, { low: 0, high: 1 }));

describe('the limits of what is ordinary', () => {
  test('are given with the mean', () => {
    // NIST/SEMATECH e-Handbook, pmc322, divided by 10: mean 5.081, limits 4.58159 and 5.58041.
    const nist = [4.96, 4.76, 4.99, 5.13, 4.78, 5.12, 5.26, 5.24, 5.36, 5.21];
    const limits = ordinaryLimits(controlChart(nist, { low: 0 }));
    expect(limits?.mean).toBeCloseTo(5.081, 9);
    expect(limits?.low).toBeCloseTo(4.58159, 5);
    expect(limits?.high).toBeCloseTo(5.58041, 5);
    expect(limits && usualFact(limits)).toEqual(['ordinarily 458% to 558%']);
  });

  test('are left out where the number itself ends before', () => {
    const high = limitsOf([0.9, 1, 0.9, 1, 0.9, 1, 0.9, 1]);
    expect(high?.high).toBeUndefined();
    expect(high && usualFact(high)).toEqual(['ordinarily 68% or more']);
    const low = limitsOf([0.1, 0, 0.1, 0, 0.1, 0, 0.1, 0]);
    expect(low?.low).toBeUndefined();
    expect(low && usualFact(low)).toEqual(['ordinarily up to 32%']);
  });

  test('are left out where nothing varies or both ends are cut', () => {
    const still = limitsOf(Array(8).fill(0.5));
    expect(still).toEqual({ mean: 0.5, low: undefined, high: undefined });
    expect(still && usualFact(still)).toEqual([]);
    expect(limitsOf([0, 1, 0, 1, 0, 1, 0, 1])).toEqual({ mean: 0.5, low: undefined, high: undefined });
  });

  test('do not exist below eight values', () => {
    expect(limitsOf([0.5, 0.6, 0.5, 0.6, 0.5, 0.6, 0.5])).toBeUndefined();
  });
});
