import { expect, test } from 'vitest';
import { readOpenData } from '../open-data/read-open-data.ts';
import { HEADER } from './invented-sprints.ts';
import { scorePulledIn } from './score-pulled-in.ts';

/** Eight sprints of one board: 20 committed, 10 of them delivered by half-time and 20 at the end. The last one takes in more. */
function rows(addedPoints: number) {
  const lines = Array.from({ length: 8 }, (_, i) =>
    [0, 30, 50, 80].map((percent) => {
      const done = percent < 50 ? 0 : 10;
      const added = i === 7 && percent === 80 ? addedPoints : 0;
      return [1, i, 14, percent, 20, added, 0, 20 + added - done, 0, done, 4, 20].join(',');
    }),
  );
  return readOpenData([HEADER, ...lines.flat()].join('\n'), 'invented.csv');
}

test('a sprint is scored when it held more at the next moment, by the chance to finish that much', () => {
  const [score, ...more] = scorePulledIn(rows(20));
  expect(more).toEqual([]);
  expect(score).toMatchObject({ isMostEver: true, cases: 1, came: 0 });
  // It always finished everything, but never had more than 10 points open by then.
  expect(score?.projectionTold).toBeGreaterThan(0.8);
  expect(score?.told).toBeLessThan(0.5);
  expect(score?.brier).toBeCloseTo((score?.told as number) ** 2, 12);
});

test('without work that came in there is nothing to score', () => {
  expect(scorePulledIn(rows(0))).toEqual([]);
});
