import { expect, test } from 'vitest';
import { readOpenData } from '../open-data/read-open-data.ts';
import { HEADER } from './invented-sprints.ts';
import { scoreRange } from './score-range.ts';

/** Sprints of one board, so much committed at the start, added later and delivered; turned into the form of the data. */
function rowsOf(sprints: readonly (readonly [committed: number, added: number, delivered: number])[]) {
  const lines = sprints.flatMap(([committed, added, delivered], i) =>
    [0, 30, 50, 80].map((percent) =>
      [1, i, 14, percent, committed, percent === 0 ? 0 : added, 0, committed, 0, 0, 4, delivered].join(','),
    ),
  );
  return readOpenData([HEADER, ...lines].join('\n'), 'invented.csv');
}

const STEADY = Array.from({ length: 8 }, () => [40, 0, 30] as const);

test('is asked from the fourth sprint with a commitment on', () => {
  expect(scoreRange(rowsOf(STEADY))).toMatchObject({ asked: 5, told: 5, crossed: expect.any(Number) });
  expect(scoreRange(rowsOf([...STEADY.slice(0, 3), [0, 5, 5]]))).toMatchObject({ asked: 0, told: 0 });
  expect(scoreRange([])).toMatchObject({ asked: 0, judged: 0, kept: undefined });
});

test('is kept where as much was delivered as the floor asks for, whole where all of it was', () => {
  // Around 30 is advised, of a team that delivers 30 of 40 each time: kept, and whole as far as it is at most 30.
  expect(scoreRange(rowsOf(STEADY))).toMatchObject({ judged: 5, kept: 1, whole: 1 });
  expect(scoreRange(rowsOf([...STEADY.slice(0, 4), [40, 0, 10]]))).toMatchObject({ judged: 2, kept: 0.5 });
});

test('is not judged where the team had committed to less than was advised', () => {
  expect(scoreRange(rowsOf([...STEADY.slice(0, 4), [10, 0, 10]]))).toMatchObject({ told: 2, judged: 1 });
});

test('boards that share a sprint don’t learn from each other’s result', () => {
  const rows = rowsOf(STEADY);
  const twin = rows.map((row) => ({ ...row, board: 2, deliveredPoints: 5 }));
  const together = rows.flatMap((row, i) => [row, ...(twin[i] ? [twin[i]] : [])]);
  const sorted = together.toSorted((a, b) => a.sprint - b.sprint);
  expect(scoreRange(sorted).asked).toBe(10);
});
