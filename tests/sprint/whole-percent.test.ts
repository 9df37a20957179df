import { expect, test } from 'vitest';
import { wholePercent, wholePercentSpan } from '../../src/sprint/whole-percent.ts';

test('estimates are whole percents with a true minus sign, and nothing is never negative', () => {
  expect([0.404, 0.125, 1, -0.03, -0.001, 23.4].map(wholePercent)).toEqual([
    '40%',
    '13%',
    '100%',
    '-3%',
    '0%',
    '2340%',
  ]);
});

test('a span says percent once, and a number once where both ends are the same', () => {
  expect(wholePercentSpan({ low: 0.171, high: 0.694 })).toBe('17 to 69%');
  expect(wholePercentSpan({ low: -0.5, high: 0 })).toBe('-50 to 0%');
  expect(wholePercentSpan({ low: 0.249, high: 0.251 })).toBe('25%');
});
