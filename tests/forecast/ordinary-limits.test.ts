import { describe, expect, test } from 'vitest';
import { controlChart, ordinaryLimits } from '../../src/forecast/control-chart.ts';
import { usualFact } from '../../src/words/charts/history.ts';

const limitsOf = (values: readonly number[]) => ordinaryLimits(controlChart(values, { low: 0, high: 1 }));

describe('the limits of what is ordinary', () => {
  test('are given with the mean', () => {
    // NIST/SEMATECH e-Handbook, pmc322, divided by 100: mean .5081, limits .458159 and .558041.
    const nist = [0.496, 0.476, 0.499, 0.513, 0.478, 0.512, 0.526, 0.524, 0.536, 0.521];
    const limits = limitsOf(nist);
    expect(limits?.mean).toBeCloseTo(0.5081, 9);
    expect(limits?.low).toBeCloseTo(0.458159, 6);
    expect(limits?.high).toBeCloseTo(0.558041, 6);
    expect(limits && usualFact(limits)).toEqual(['ordinarily 46% to 56%']);
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
