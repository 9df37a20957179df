import { describe, expect, test } from 'vitest';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { readOpenData } from '../open-data/read-open-data.ts';
import { HEADER } from './invented-sprints.ts';
import { scoreRelease } from './score-release.ts';

/** A board's sprints with these deliveries, one after another. */
function board(id: number, delivered: readonly number[]): SprintMoment[] {
  const lines = delivered.map((points, i) => `${id},${i},14,0,20,0,0,20,0,0,4,${points}`);
  return readOpenData([HEADER, ...lines].join('\n'), 'invented.csv');
}

const STEADY = Array.from({ length: 30 }, () => 10);

describe('the cases of a board', () => {
  test('are the moments after three sprints or more whose pessimistic date lies within its file', () => {
    // At a steady pace the pessimistic date for 3 sprints' worth lies in the sixth sprint: after sprints 3 to 24.
    const [three] = scoreRelease(board(900, STEADY));
    expect([three?.board, three?.backlogSprints, three?.cases]).toEqual([900, 3, 22]);
  });

  test('do not exist without sprints enough', () => {
    expect(scoreRelease(board(900, STEADY.slice(0, 8)))).toEqual([]);
  });

  test('do not exist after empty sprints only', () => {
    expect(
      scoreRelease(
        board(
          900,
          STEADY.map(() => 0),
        ),
      ),
    ).toEqual([]);
  });
});

describe('a date holds when as much is finished by then as was asked about', () => {
  test('a steady pace holds the likely and the pessimistic date and no optimistic one', () => {
    for (const { held15, held50, held85 } of scoreRelease(board(900, STEADY))) {
      expect([held15, held50, held85]).toEqual([0, 1, 1]);
    }
  });

  test('a date within a sprint counts that part of the sprint', () => {
    // For 30 points the optimistic date lies at 1.7 sprints: nothing in the first, 0.7 of 60 in the second.
    const [three] = scoreRelease(board(900, [10, 10, 10, 0, 60, 0, 0, 0, 0]));
    expect([three?.cases, three?.held15]).toEqual([1, 1]);
    const [fewer] = scoreRelease(board(900, [10, 10, 10, 0, 40, 0, 0, 0, 0]));
    expect([fewer?.cases, fewer?.held15]).toEqual([1, 0]);
  });

  test('a pace that falls by half at once holds no likely date from before', () => {
    const [three] = scoreRelease(board(900, [10, 10, 10, 5, 5, 5, 5, 5, 5]));
    expect(three?.held50).toBeLessThan(1);
    expect(three?.held15).toBe(0);
  });
});

test('boards are scored on their own sprints, in the order of their numbers', () => {
  const mixed = [
    ...board(902, STEADY),
    ...board(
      901,
      STEADY.map(() => 4),
    ),
  ];
  const alone = [
    ...scoreRelease(
      board(
        901,
        STEADY.map(() => 4),
      ),
    ),
    ...scoreRelease(board(902, STEADY)),
  ];
  expect(scoreRelease(mixed)).toEqual(alone);
});
