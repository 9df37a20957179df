import { expect, test } from 'vitest';
import { readOpenData } from '../open-data/read-open-data.ts';
import { HEADER } from './invented-sprints.ts';
import { scorePlanning, toldAtPlanning } from './score-planning.ts';

/** Sprints of one board, so much committed at the start, added later and delivered. */
function rowsOf(sprints: readonly (readonly [committed: number, added: number, delivered: number])[]) {
  const lines = sprints.flatMap(([committed, added, delivered], i) =>
    [0, 80].map((percent) =>
      [1, i, 14, percent, committed, percent === 0 ? 0 : added, 0, committed, 0, 0, 4, delivered].join(','),
    ),
  );
  return readOpenData([HEADER, ...lines].join('\n'), 'invented.csv');
}

const STEADY = Array.from({ length: 6 }, () => [40, 0, 30] as const);

test('the fourth sprint with a commitment is the first that is told anything', () => {
  expect(toldAtPlanning(rowsOf(STEADY.slice(0, 3)))).toEqual([]);
  expect(toldAtPlanning(rowsOf(STEADY.slice(0, 4))).map(({ chance }) => chance)).toEqual([
    'kept',
    'finishedWhole',
    'ranOut',
  ]);
});

test('a commitment is kept from four fifths on, finished with all of it, and run out of with more than a fifth pulled in', () => {
  const cameAfter = (last: readonly [number, number, number]) =>
    toldAtPlanning(rowsOf([...STEADY, last]))
      .slice(-3)
      .map(({ came }) => came);
  expect(cameAfter([10, 2, 7])).toEqual([false, false, false]);
  expect(cameAfter([10, 2, 8])).toEqual([true, false, false]);
  expect(cameAfter([10, 3, 10])).toEqual([true, true, true]);
});

test('a team that always delivers 30 is told that it keeps 30 and not 45', () => {
  const keptOf = (committed: number) => toldAtPlanning(rowsOf([...STEADY, [committed, 0, 30]])).at(-3)?.told;
  expect(keptOf(30)).toBeGreaterThan(0.85);
  expect(keptOf(45)).toBeLessThan(0.2);
});

test('each chance has bins of its own', () => {
  const told = [0.31, 0.35].flatMap((chance) => [
    { chance: 'kept', told: chance, came: true } as const,
    { chance: 'ranOut', told: chance + 0.5, came: false } as const,
  ]);
  expect(scorePlanning(told)).toEqual([
    { chance: 'kept', told: expect.closeTo(0.33, 12), came: 1, cases: 2 },
    { chance: 'ranOut', told: expect.closeTo(0.83, 12), came: 0, cases: 2 },
  ]);
});
