import { describe, expect, test } from 'vitest';
import type { Thresholds, ThresholdsProblem } from '../../src/sprint/thresholds.ts';
import { DEFAULT_THRESHOLDS, whyNotThresholds } from '../../src/sprint/thresholds.ts';

test('the defaults are those of common practice (no published source)', () => {
  expect(DEFAULT_THRESHOLDS).toEqual({
    keptShareAtLeast: 0.8,
    surpriseRatioAtMost: 0.2,
    pullInRatioAtMost: 0.2,
    planShareAtLeast: 0.8,
    estimateAccuracyAtLeast: 0.8,
    estimateAccuracyAtMost: 0.95,
    velocityGrowthFirstMark: undefined,
    velocityGrowthLongRangeMark: undefined,
  });
  expect(whyNotThresholds(DEFAULT_THRESHOLDS)).toBeUndefined();
});

describe('thresholds that no team can have are refused by name', () => {
  const outOfRange = (name: keyof Thresholds, most: number): ThresholdsProblem => ({
    code: 'threshold-out-of-range',
    name,
    most,
  });
  const cases: [Partial<Thresholds>, ThresholdsProblem][] = [
    [{ keptShareAtLeast: Number.NaN }, outOfRange('keptShareAtLeast', 1)],
    [{ keptShareAtLeast: 80 }, outOfRange('keptShareAtLeast', 1)],
    [{ planShareAtLeast: 1.01 }, outOfRange('planShareAtLeast', 1)],
    [{ estimateAccuracyAtMost: 95 }, outOfRange('estimateAccuracyAtMost', 1)],
    [{ surpriseRatioAtMost: -0.1 }, outOfRange('surpriseRatioAtMost', 100)],
    [{ pullInRatioAtMost: 101 }, outOfRange('pullInRatioAtMost', 100)],
    [
      { velocityGrowthLongRangeMark: Number.POSITIVE_INFINITY },
      outOfRange('velocityGrowthLongRangeMark', 100),
    ],
    [{ estimateAccuracyAtLeast: 0.96 }, { code: 'accuracy-crossed' }],
    [{ velocityGrowthFirstMark: 6, velocityGrowthLongRangeMark: 5 }, { code: 'growth-marks-crossed' }],
  ];
  test.each(cases)('%j', (given, problem) => {
    expect(whyNotThresholds({ ...DEFAULT_THRESHOLDS, ...given })).toEqual(problem);
  });

  test('the ends of the ranges are allowed', () => {
    const ends = { keptShareAtLeast: 1, planShareAtLeast: 0, pullInRatioAtMost: 100, surpriseRatioAtMost: 0 };
    expect(whyNotThresholds({ ...DEFAULT_THRESHOLDS, ...ends })).toBeUndefined();
  });

  test.each<Partial<Thresholds>>([{ velocityGrowthFirstMark: 6 }, { velocityGrowthLongRangeMark: 2 }])(
    'one mark alone is allowed: %j',
    (mark) => {
      expect(whyNotThresholds({ ...DEFAULT_THRESHOLDS, ...mark })).toBeUndefined();
    },
  );
});
