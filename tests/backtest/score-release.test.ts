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
    // After sprint 3 the pessimistic date for 3 sprints' worth lies in the sixth sprint; the more of such dates have come
    // out too late, the nearer it moves to the third one on, so that after sprint 27 it can't be known.
    const [three] = scoreRelease(board(900, STEADY));
    expect([three?.board, three?.backlogSprints, three?.cases]).toEqual([900, 3, 24]);
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
  test('a steady pace holds the likely and the pessimistic date, and the optimistic one once it has learnt', () => {
    for (const { cases, held15, held50, held85 } of scoreRelease(board(900, STEADY))) {
      expect([held50, held85]).toEqual([1, 1]);
      expect(held15 * cases).toBeLessThan(cases);
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

test('boards lend each other how their forecasts came out, and are listed in the order of their numbers', () => {
  const four = STEADY.map(() => 4);
  // One after the other, so that the second board has the whole of the first to learn from.
  const scores = scoreRelease([...board(902, STEADY), ...board(901, four)]);
  expect(scores.map(({ board, backlogSprints }) => [board, backlogSprints])).toEqual(
    [901, 902].flatMap((id) => [3, 6, 10].map((size) => [id, size])),
  );
  const casesOf = (id: number, of: typeof scores) =>
    of.filter((score) => score.board === id).reduce((sum, { cases }) => sum + cases, 0);
  expect(casesOf(902, scores)).toBe(casesOf(902, scoreRelease(board(902, STEADY))));
  expect(casesOf(901, scores)).toBeGreaterThan(casesOf(901, scoreRelease(board(901, four))));
});

test('boards that share a sprint are not told its end before they are forecast', () => {
  const alone = scoreRelease(board(900, STEADY));
  const twins = STEADY.flatMap((points, i) =>
    readOpenData(
      [HEADER, `900,${i},14,0,20,0,0,20,0,0,4,${points}`, `901,${i},14,0,20,0,0,20,0,0,4,0`].join('\n'),
      'invented.csv',
    ),
  );
  // The twin never finishes anything, so it says nothing.
  expect(scoreRelease(twins)).toEqual(alone);
});
