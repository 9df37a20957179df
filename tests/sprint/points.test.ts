import { describe, expect, test } from 'vitest';
import { formatPoints, isPoints, isPointsChange, parsePoints } from '../../src/sprint/points.ts';

describe('points are multiples of 0.5 from 0 to 999.5', () => {
  test.each([0, 0.5, 1, 20.5, 999, 999.5])('%s is an amount of points', (value) => {
    expect(isPoints(value)).toBe(true);
  });

  test.each([-0.5, 0.25, 0.1, 1000, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
    '%s is none',
    (value) => {
      expect(isPoints(value)).toBe(false);
    },
  );

  test('a change of points may be negative, within the same bounds', () => {
    expect([-999.5, -0.5, 0, 3].map(isPointsChange)).toEqual([true, true, true, true]);
    expect([-1000, -0.3, Number.NaN].map(isPointsChange)).toEqual([false, false, false]);
  });
});

describe('points are read as people type them', () => {
  test.each([
    ['3', 3],
    ['0', 0],
    [' 2 ', 2],
    ['2.0', 2],
    ['0.5', 0.5],
    ['0,5', 0.5],
    ['1.50', 1.5],
    ['½', 0.5],
    ['.5', 0.5],
    ['1½', 1.5],
    ['1 ½', 1.5],
    ['999.5', 999.5],
  ])('%j is %s', (text, points) => {
    expect(parsePoints(text)).toBe(points);
  });

  test.each([
    '',
    ' ',
    '-1',
    '+1',
    '0.25',
    '1.3',
    '1000',
    '1e2',
    'three',
    '1 5',
    '1.',
    '.',
    '.0',
    '.55',
    '0x1',
    'NaN',
    '½½',
    '3½½',
    '2.05',
  ])('%j is refused', (text) => {
    expect(parsePoints(text)).toBeUndefined();
  });

  test('every amount of points is read back from its text', () => {
    for (let halves = 0; halves <= 1999; halves += 1) {
      expect(parsePoints(formatPoints(halves / 2))).toBe(halves / 2);
    }
  });
});

test('points below 0 are written with their sign', () => {
  expect(formatPoints(-1.5)).toBe('-1.5');
});
