import { expect, test } from 'vitest';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { distinctBoards } from './moments.ts';

/** The boards' sprints, each at two moments. */
function rowsOf(boards: Readonly<Record<number, readonly number[]>>): SprintMoment[] {
  return Object.entries(boards).flatMap(([board, sprints]) =>
    sprints.flatMap((sprint) =>
      [0, 50].map((elapsedPercent) => ({ board: Number(board), sprint, elapsedPercent }) as SprintMoment),
    ),
  );
}

test.each([
  ['stay where no sprint is another’s', { 1: [1, 2], 2: [3, 4, 5] }, [1, 2]],
  ['are left out but one where they show the same', { 1: [1, 2, 3], 2: [1, 2, 3], 3: [1, 2, 3] }, [1]],
  ['are left out where most of their sprints are a larger one’s', { 1: [1, 2, 9], 2: [1, 2, 3, 4] }, [2]],
  ['stay where half of them are', { 1: [1, 9], 2: [1, 2, 3, 4] }, [1, 2]],
  ['are left out where several larger ones hold most', { 1: [1, 2, 3], 2: [4, 5, 6], 3: [1, 4, 9] }, [1, 2]],
])('boards %s', (_, boards, staying) => {
  const rows = distinctBoards(rowsOf(boards));
  expect([...new Set(rows.map(({ board }) => board))]).toEqual(staying);
  expect(rows).toEqual(rowsOf(boards).filter(({ board }) => (staying as number[]).includes(board)));
});
