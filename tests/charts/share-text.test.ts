import { describe, expect, test } from 'vitest';
import { percentSpan, shortShare, wholePercent } from '../../src/charts/share-text.ts';

describe('shares as text in charts', () => {
  test('are whole percents with a true minus sign, and nothing is never negative', () => {
    expect([0.404, 0.125, 1, -0.03, -0.001, 23.4].map(wholePercent)).toEqual([
      '40 %',
      '13 %',
      '100 %',
      '−3 %',
      '0 %',
      '2340 %',
    ]);
  });

  test('become so many times from 10,000 % on, where room is scarce', () => {
    expect([0.5, 99.99, 100, 2_400.4, -150].map(shortShare)).toEqual([
      '50 %',
      '9999 %',
      '100×',
      '2400×',
      '−150×',
    ]);
  });

  test('an interval says percent once', () => {
    expect(percentSpan({ low: 0.171, high: 0.694 })).toBe('17 to 69 %');
    expect(percentSpan({ low: -0.5, high: 0 })).toBe('−50 to 0 %');
  });
});
