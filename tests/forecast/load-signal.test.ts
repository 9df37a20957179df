import { expect, test } from 'vitest';
import { type LoadedSprint, loadReading } from '../../src/forecast/load-signal.ts';
import { weightedPoints } from '../../src/forecast/weighted-points.ts';

/** All open and committed to, with so many points missing. */
const sprint = (missingPoints: number, ...sizes: number[]): LoadedSprint => ({
  sizes,
  finishedPoints: 0,
  open: sizes.map((estimatePoints) => ({ estimatePoints, isCommitted: true, isBegun: false })),
  missingPoints,
});
const HALVES = Array.from({ length: 40 }, () => 0.5);

test.each([
  // Chance of 15.5, 18 and 20 points in tenths.
  ['less likely than not to be kept', [6, 4, 0], 'heavy'],
  ['as likely as not to be kept', [5, 5, 0], 'on the line'],
  ['just not likely enough to finish everything', [1, 2, 7], 'on the line'],
  ['likely to finish everything', [1, 1, 8], 'light'],
])('a sprint that is %s', (_, tenths, signal) => {
  expect(loadReading(weightedPoints([15.5, 18, 20], tenths), sprint(16, ...HALVES)).signal).toBe(signal);
});

test('both chances are given; an amount that is just reached counts', () => {
  const reading = loadReading(weightedPoints([15.5, 16, 20], [1, 2, 1]), sprint(16, ...HALVES));
  expect(reading.keepingChance).toBeCloseTo(0.75, 12);
  expect(reading.allFinishedChance).toBe(0.25);
});

test('where only all the cards together reach the floor, keeping it is finishing everything', () => {
  const velocity = weightedPoints([13, 16, 18, 20], [6, 23, 40, 31]);
  const { keepingChance, allFinishedChance, isAllNeeded } = loadReading(velocity, sprint(16, 13, 7));
  expect(allFinishedChance).toBeCloseTo(0.31, 12);
  expect(keepingChance).toBeCloseTo(allFinishedChance, 12);
  expect(isAllNeeded).toBe(true);
});

test('keeping it is never less likely than finishing everything', () => {
  const velocity = weightedPoints([0, 4, 9.5, 13, 18, 21], [1, 2, 2, 2, 2, 1]);
  for (let missing = 0; missing <= 21; missing += 0.5) {
    const { keepingChance, allFinishedChance } = loadReading(velocity, sprint(missing, 8, 5, 5, 3));
    expect(keepingChance).toBeGreaterThanOrEqual(allFinishedChance - 1e-12);
  }
});

test('what was pulled in takes time from what is committed to', () => {
  const velocity = weightedPoints([0, 3, 5, 8, 10, 13], [1, 2, 2, 2, 2, 1]);
  const alone = sprint(8, 5, 5);
  const [pulledIn] = sprint(0, 3).open;
  const busy = { ...alone, sizes: [5, 5, 3], open: [...alone.open, { ...pulledIn, isCommitted: false }] };
  const keeping = (one: LoadedSprint) => loadReading(velocity, one).keepingChance;
  expect(keeping(busy as LoadedSprint)).toBeLessThan(keeping(alone));
});

test('a sprint without cards is light', () => {
  expect(loadReading(weightedPoints([0], [1]), sprint(0)).signal).toBe('light');
});
