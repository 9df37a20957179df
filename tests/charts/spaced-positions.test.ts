import { expect, test } from 'vitest';
import { spacedPositions } from '../../src/charts/spaced-positions.ts';

test('a position is kept when none that came before it is nearer than the gap', () => {
  expect([...spacedPositions([0, 10, 5, 2, 8, 3], 3)]).toEqual([0, 10, 5]);
});

test('what is wanted first wins over its neighbours', () => {
  expect([...spacedPositions([4, 3, 5, 1], 2)]).toEqual([4, 1]);
});

test('a gap of exactly the least is enough', () => {
  expect([...spacedPositions([0, 2], 2)]).toEqual([0, 2]);
});
