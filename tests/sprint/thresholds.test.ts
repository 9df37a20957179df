import { describe, expect, test } from 'vitest';
import type { Thresholds } from '../../src/sprint/thresholds.ts';
import { DEFAULT_THRESHOLDS, whyNotThresholds } from '../../src/sprint/thresholds.ts';

test('the defaults are those of common practice (no published source)', () => {
  expect(DEFAULT_THRESHOLDS).toEqual({
    keptShareAtLeast: 0.8,
    surpriseRatioAtMost: 0.2,
    pullInRatioAtMost: 0.2,
    planShareAtLeast: 0.8,
    estimateAccuracyAtLeast: 0.8,
    estimateAccuracyAtMost: 0.95,
    velocityGrowthFirstMark: 2.4,
    velocityGrowthLongRangeMark: 5,
  });
  expect(whyNotThresholds(DEFAULT_THRESHOLDS)).toBeUndefined();
});

describe('thresholds that cannot stand are refused by name', () => {
  const cases: [Partial<Thresholds>, string][] = [
    [{ keptShareAtLeast: Number.NaN }, 'keptShareAtLeast must be a number from 0 to 1'],
    [
      { keptShareAtLeast: 80 },
      'keptShareAtLeast must be a number from 0 to 1, where 1 means 100%; it is 80.',
    ],
    [{ planShareAtLeast: 1.01 }, 'planShareAtLeast must be a number from 0 to 1'],
    [{ estimateAccuracyAtMost: 95 }, 'estimateAccuracyAtMost must be a number from 0 to 1'],
    [{ surpriseRatioAtMost: -0.1 }, 'surpriseRatioAtMost must be a number from 0 to 100'],
    [{ pullInRatioAtMost: 101 }, 'pullInRatioAtMost must be a number from 0 to 100'],
    [{ velocityGrowthLongRangeMark: Number.POSITIVE_INFINITY }, 'velocityGrowthLongRangeMark'],
    [{ estimateAccuracyAtLeast: 0.96 }, 'floor of the estimate accuracy lies above its ceiling'],
    [{ velocityGrowthFirstMark: 6 }, 'first mark of the velocity growth lies above'],
  ];
  test.each(cases)('%j', (given, words) => {
    expect(whyNotThresholds({ ...DEFAULT_THRESHOLDS, ...given })).toContain(words);
  });

  test('the ends of the ranges are allowed', () => {
    const ends = { keptShareAtLeast: 1, planShareAtLeast: 0, pullInRatioAtMost: 100, surpriseRatioAtMost: 0 };
    expect(whyNotThresholds({ ...DEFAULT_THRESHOLDS, ...ends })).toBeUndefined();
  });
});
