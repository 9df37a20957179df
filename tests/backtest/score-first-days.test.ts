import { expect, test } from 'vitest';
import { NO_HISTORY, projectVelocity } from '../../src/forecast/project-velocity.ts';
import { weightedPoints } from '../../src/forecast/weighted-points.ts';
import { readOpenData, type SprintMoment } from '../open-data/read-open-data.ts';
import { HEADER } from './invented-sprints.ts';
import { planningOf, scoreFirstDays } from './score-first-days.ts';
import type { Foretold } from './walk-forward.ts';

/** Six sprints of one board that commit to 40 and deliver 32, and a seventh at two moments. */
const ROWS = readOpenData(
  [
    HEADER,
    ...Array.from({ length: 7 }, (_, i) =>
      [0, 30, 50].map((percent) => [1, i, 14, percent, 40, 0, 0, 40, 0, 0, 4, 32].join(',')),
    ).flat(),
  ].join('\n'),
  'invented.csv',
);

/** The seventh, told by the projection that it finishes 32 with this chance. */
function foretold(chance: number, elapsedPercent: number): Foretold {
  const row = ROWS.findLast((one) => one.elapsedPercent === elapsedPercent) as SprintMoment;
  return {
    row,
    projection: {
      ...projectVelocity(NO_HISTORY, '1', { cardPoints: 40, finishedPoints: 0, underwayPoints: 0 }),
      distribution: weightedPoints([20, 32], [1 - chance, chance]),
    },
    later: [],
    runningMedianPoints: 0,
    finishSharePoints: 0,
  };
}

test('the status lies between planning and projection, nearer to the planning at the start', () => {
  const planning = planningOf(ROWS);
  const kept = planning(foretold(0.5, 0).row)?.kept as number;
  expect(kept).toBeGreaterThan(0.85);
  const start = scoreFirstDays([foretold(0.5, 0)], planning);
  expect(start?.projectionApart).toBeCloseTo(kept - 0.5, 12);
  expect(start?.apart).toBeCloseTo(0.5 * (kept - 0.5), 3);
  expect(start?.brier).toBeCloseTo((1 - (kept - (start?.apart as number))) ** 2, 12);
  expect(start?.projectionBrier).toBeCloseTo(0.25, 12);
  const later = scoreFirstDays([foretold(0.5, 30)], planning);
  expect(later?.apart).toBeGreaterThan(start?.apart as number);
});

test('where the planning is silent there is nothing to score', () => {
  const planning = planningOf(ROWS);
  expect(scoreFirstDays([foretold(0.5, 50)], planning)).toBeUndefined();
  expect(scoreFirstDays([foretold(0.5, 0)], () => undefined)).toBeUndefined();
});
