import { describe, expect, test } from 'vitest';
import { readOpenData, type SprintMoment } from '../open-data/read-open-data.ts';
import { HEADER, inventedCsv } from './invented-sprints.ts';
import { sharedSprints } from './moments.ts';
import {
  foretellMoments,
  type ProjectionScore,
  scoreProjection,
  sprintsToLearn,
} from './score-projection.ts';
import { walkForward } from './walk-forward.ts';

/** All sprints of a file, at each moment that has scores. */
function scoresOf(rows: readonly SprintMoment[]): ProjectionScore[] {
  return foretellMoments(rows)
    .filter(({ set }) => set === 'all')
    .map(scoreProjection);
}

const ROWS = readOpenData(inventedCsv(120), 'invented.csv');

test.each([
  [60, 40],
  [199, 40],
  [205, 41],
  [348, 69],
])('of %s sprints the first %s only teach', (sprints, learnt) => {
  expect(sprintsToLearn(sprints)).toBe(learnt);
});

test('each moment is scored from the sprint on that comes after those that only teach', () => {
  const scores = scoresOf(ROWS);
  expect(scores.map(({ elapsedPercent, scored }) => [elapsedPercent, scored])).toEqual(
    [0, 30, 50, 80].map((percent) => [percent, 80]),
  );
});

test('a file that is too short to teach has no scores', () => {
  expect(scoresOf(readOpenData(inventedCsv(40), 'invented.csv'))).toEqual([]);
});

test('sprints without cards at the moment are left out of the second set, and teach nothing there', () => {
  const empty = ROWS.map((row, i) => (i % 12 < 4 ? { ...row, startPoints: 0, deliveredPoints: 300 } : row));
  const sets = foretellMoments(empty).map(scoreProjection);
  expect(sets.map(({ set, scored }) => [set, scored])).toEqual([
    ...[0, 30, 50, 80].map(() => ['all', 80]),
    ...[0, 30, 50, 80].map(() => ['with-cards', 40]),
  ]);
  const without = scoresOf(ROWS.filter((_, i) => i % 12 >= 4));
  expect(sets.slice(4).map(({ set: _, ...score }) => score)).toEqual(
    without.map(({ set: _, ...score }) => score),
  );
});

describe('on sprints that do follow a rule', () => {
  const scores = scoresOf(ROWS);

  test('the projection beats the running median of delivered − committed, by more as the sprint goes on', () => {
    const shares = scores.map(({ errorShare }) => errorShare);
    expect(shares[0]).toBeLessThan(0.8);
    expect(shares[3]).toBeLessThan((shares[0] as number) / 2);
  });

  test('the intervals hold as often as promised, and CRPS is below the error of the single guess', () => {
    for (const { coverage50, coverage80, crps, meanAbsoluteError, width50, width80 } of scores) {
      expect(Math.abs(coverage50 - 0.5)).toBeLessThan(0.08);
      expect(Math.abs(coverage80 - 0.8)).toBeLessThan(0.06);
      expect(width50).toBeLessThan(width80);
      expect(crps).toBeLessThan(meanAbsoluteError);
    }
  });
});

test('the baseline is committed + the median of delivered − committed of the sprints before', () => {
  // 40 sprints of 10 that delivered 7, then one of 20 that delivered 14, which the baseline puts at 17.
  const row = (sprint: number, start: number, delivered: number): string =>
    `900,${sprint},14,0,${start + 2},1,3,${start},0,0,4,${delivered}`;
  const lines = [...Array.from({ length: 40 }, (_, i) => row(i, 10, 7)), row(40, 20, 14)];
  const [score] = scoresOf(readOpenData([HEADER, ...lines].join('\n'), 'invented.csv'));
  expect(score?.scored).toBe(1);
  expect(score?.meanAbsoluteError).toBeCloseTo((score?.errorShare as number) * 3, 12);
  expect(score?.meanAbsoluteError).toBe(0);
});

describe('no prediction sees what had not ended', () => {
  test('a result counts only after it is there: 100 points more in the last one are 100 points more of error', () => {
    const withLast = (deliveredPoints: number): ProjectionScore[] =>
      scoresOf(ROWS.map((row, i) => (i >= ROWS.length - 4 ? { ...row, deliveredPoints } : row)));
    const more = withLast(500);
    for (const [i, score] of withLast(400).entries()) {
      const after = more[i] as typeof score;
      expect((after.meanAbsoluteError - score.meanAbsoluteError) * score.scored).toBeCloseTo(100, 9);
      expect([after.width50, after.width80]).toEqual([score.width50, score.width80]);
    }
  });

  test('boards that share a sprint are not predicted from each other', () => {
    const csv = (firstDelivers: number): string =>
      [
        HEADER,
        ...Array.from({ length: 45 }, (_, i) =>
          [900, 901].map(
            (board) =>
              `${board},${i},14,0,20,0,0,20,0,0,4,${i === 44 && board === 900 ? firstDelivers : 12 + (i % 5)}`,
          ),
        ).flat(),
      ].join('\n');
    const lastOf = (rows: SprintMoment[]): number =>
      walkForward(rows, 40).at(-1)?.projection.meanPoints as number;
    const [low, high] = [readOpenData(csv(2), 'invented.csv'), readOpenData(csv(60), 'invented.csv')];
    expect(sharedSprints(low).every(({ length }) => length === 2)).toBe(true);
    expect(lastOf(low)).toBe(lastOf(high));
    // Kept apart, the second of the pair learns from the first.
    const apart = (rows: SprintMoment[]): SprintMoment[] => rows.map((row, i) => ({ ...row, sprint: i }));
    expect(lastOf(apart(low))).toBeLessThan(lastOf(apart(high)));
  });
});
