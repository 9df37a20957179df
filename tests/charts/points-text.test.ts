import { expect, test } from 'vitest';
import { pointsNumber, pointsText } from '../../src/charts/points-text.ts';

test.each([
  [0, '0'],
  [-0, '0'],
  [3, '3'],
  [3.5, '3.5'],
  [20 / 3, '6.7'],
  [2.96, '3'],
  [-1.5, '-1.5'],
  [-0.04, '0'],
])('%s points are written %s', (points, text) => {
  expect(pointsNumber(points)).toBe(text);
});

test('only exactly one is a point', () => {
  expect([0, 0.5, 1, 1.5].map(pointsText)).toEqual(['0 points', '0.5 points', '1 point', '1.5 points']);
});
