import { expect, test } from 'vitest';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { MOMENTS_PERCENT } from './moments.ts';
import { scoreImported } from './score-imported.ts';

/** A board that commits to 20 and finishes nothing before the end. */
function board(sprints: number, delivered: (sprint: number) => number): SprintMoment[] {
  return Array.from({ length: sprints }, (_, sprint) =>
    MOMENTS_PERCENT.map(
      (elapsedPercent): SprintMoment => ({
        ...{
          board: 1,
          sprint,
          elapsedPercent,
          members: 4,
          plannedDays: 14,
          todoPoints: 20,
          startPoints: 20,
          addedPoints: 0,
          removedPoints: 0,
        },
        ...{ donePoints: 0, inProgressPoints: 0, deliveredPoints: delivered(sprint) },
      }),
    ),
  ).flat();
}

test('the seventh sprint to the twenty-fifth are scored, at each moment', () => {
  expect(scoreImported(board(30, () => 20)).map(({ scored }) => scored)).toEqual([19, 19, 19, 19]);
  expect(scoreImported(board(6, () => 20))).toEqual([]);
});

test('a team that finishes everything is told so at the start; who has nothing at 80% of the time is told less', () => {
  const [atStart, , , late] = scoreImported(board(12, () => 20));
  expect(atStart?.brier).toBeLessThan(0.05);
  expect(late?.brier).toBeGreaterThan(0.1);
});
