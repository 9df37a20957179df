import { describe, expect, test } from 'vitest';
import { readOpenData, type SprintMoment } from '../open-data/read-open-data.ts';
import { HEADER } from './invented-sprints.ts';
import { scoreJoint } from './score-joint.ts';

/** Two boards that share their sprints; undefined: the board is not in this one. */
function twoBoards(
  delivered: readonly (readonly [number | undefined, number | undefined])[],
): SprintMoment[] {
  const lines = delivered.flatMap((both, sprint) =>
    both.flatMap((points, i) =>
      points === undefined ? [] : [`${900 + i},${sprint},14,0,20,0,0,20,0,0,4,${points}`],
    ),
  );
  return readOpenData([HEADER, ...lines].join('\n'), 'invented.csv');
}

const STEADY: readonly [number, number][] = Array.from({ length: 40 }, () => [10, 20]);

describe('the joint dates of two boards', () => {
  test('hold where both go on steadily, and each pair is scored once a sprint', () => {
    const [three] = scoreJoint(twoBoards(STEADY));
    expect(three).toMatchObject({ backlogSprints: 3, pairs: 1, heldSurely85: 1 });
    expect(three?.heldSurely50).toBeGreaterThanOrEqual(three?.heldSoonest50 as number);
    expect(three?.cases).toBeLessThanOrEqual(STEADY.length);
    expect(three?.cases).toBeGreaterThan(10);
  });

  test('do not hold once either board stops, however steady the other', () => {
    const stopped = STEADY.map(([a, b], i): [number, number] => [a, i < 5 ? b : 0]);
    for (const { heldSurely85, heldSoonest50 } of scoreJoint(twoBoards(stopped))) {
      expect(heldSoonest50).toBe(0);
      expect(heldSurely85).toBeLessThan(0.5);
    }
    expect(scoreJoint(twoBoards(stopped))).not.toEqual([]);
  });

  test('are scored for boards only that are at work at the same time', () => {
    const inTurn = STEADY.map(([a, b], i): [number | undefined, number | undefined] =>
      i < 20 ? [a, undefined] : [undefined, b],
    );
    expect(scoreJoint(twoBoards(inTurn))).toEqual([]);
  });
});
