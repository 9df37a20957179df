import { expect, test } from 'vitest';
import { NO_HISTORY, projectVelocity } from '../../src/forecast/project-velocity.ts';
import { weightedPoints } from '../../src/forecast/weighted-points.ts';
import { readOpenData, type SprintMoment } from '../open-data/read-open-data.ts';
import { HEADER } from './invented-sprints.ts';
import { scoreChances } from './score-chances.ts';
import type { Foretold } from './walk-forward.ts';

const NO_PLANNING = () => undefined;

/** 10 committed; told that 8 or more get finished with this chance. */
function foretold(chance: number, delivered: number, done = 0): Foretold {
  const csv = [HEADER, `1,1,14,50,10,0,0,${10 - done},0,${done},4,${delivered}`].join('\n');
  return {
    row: readOpenData(csv, 'invented.csv')[0] as SprintMoment,
    projection: {
      ...projectVelocity(NO_HISTORY, '1', { cardPoints: 10, finishedPoints: done, underwayPoints: 0 }),
      distribution: weightedPoints([7, 8], [1 - chance, chance]),
    },
    later: [],
    runningMedianPoints: 0,
    finishSharePoints: 0,
  };
}

test('a bin holds what was told about the same, with the mean that was told and the share that came', () => {
  const cases = [foretold(0.31, 8), foretold(0.35, 7), foretold(0.39, 10), foretold(0.91, 7)];
  const [low, high, ...more] = scoreChances(cases, NO_PLANNING);
  expect(low?.told).toBeCloseTo(0.35, 12);
  expect(low?.came).toBeCloseTo(2 / 3, 12);
  expect(low?.cases).toBe(3);
  expect(high).toEqual({ told: expect.closeTo(0.91, 12), came: 0, cases: 1 });
  expect(more).toEqual([]);
});

test('certainty has a place in the last bin', () => {
  expect(scoreChances([foretold(0.95, 8), foretold(1, 8)], NO_PLANNING)).toHaveLength(1);
});

test('where the floor is reached already, nothing is foretold', () => {
  expect(scoreChances([foretold(1, 8, 8)], NO_PLANNING)).toEqual([]);
});
