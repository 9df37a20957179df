import { expect, test } from 'vitest';
import { stillFinishable } from '../../src/forecast/still-finishable.ts';

const NOW = { cardPoints: 20, finishedPoints: 8, underwayPoints: 2 };

/** A velocity of 14, or of everything there is, as likely. */
const half = (more: number) => ({
  cdf: (points: number) => (points < 14 ? 0 : points < 20 + more ? 0.5 : 1),
});

test('up to the open work it is the velocity less what is done, and what is underway is half the way', () => {
  const atLeast = stillFinishable(NOW, half);
  // Of 12 open points 2 are underway, so that 10 points of work finish them all, and 5 half of them.
  expect([0, 4, 5, 5.5, 10].map(atLeast)).toEqual([1, 1, 1, 0.5, 0.5]);
});

test('beyond it is the chance to finish everything with so much more in the sprint', () => {
  const asked: number[] = [];
  const atLeast = stillFinishable(NOW, (more) => {
    asked.push(more);
    return { cdf: (points) => (points < 20 + more ? (more + 1) / 20 : 1) };
  });
  expect(atLeast(14)).toBe(1 - 5 / 20);
  expect(asked).toContain(4);
});

test('more work is never likelier, though the past may speak better of a larger sprint', () => {
  const atLeast = stillFinishable(NOW, (more) => ({
    cdf: (points) => (points < 20 + more ? (more === 3 ? 0.7 : 0.4) : 1),
  }));
  expect([10, 12, 13, 14, 18].map(atLeast)).toEqual([
    0.6,
    0.6,
    expect.closeTo(0.3, 12),
    expect.closeTo(0.3, 12),
    expect.closeTo(0.3, 12),
  ]);
});

test('with nothing in the sprint, and nothing more, everything is finished', () => {
  const empty = { cardPoints: 0, finishedPoints: 0, underwayPoints: 0 };
  const atLeast = stillFinishable(empty, (more) => ({ cdf: (points) => (points < more ? 0.25 : 1) }));
  expect(atLeast(0)).toBe(1);
  expect(atLeast(3)).toBe(0.75);
});
