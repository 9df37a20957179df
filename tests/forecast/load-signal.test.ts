import { expect, test } from 'vitest';
import { loadReading } from '../../src/forecast/load-signal.ts';
import { weightedPoints } from '../../src/forecast/weighted-points.ts';

const SPRINT = { floorPoints: 16, cardPoints: 20 };

test.each([
  // Chance of 15.5, 18 and 20 points in tenths.
  ['less likely than not to be kept', [6, 4, 0], 'heavy'],
  ['as likely as not to be kept', [5, 5, 0], 'on the line'],
  ['just not likely enough to finish everything', [1, 2, 7], 'on the line'],
  ['likely to finish everything', [1, 1, 8], 'light'],
])('a sprint that is %s', (_, tenths, signal) => {
  expect(loadReading(weightedPoints([15.5, 18, 20], tenths), SPRINT).signal).toBe(signal);
});

test('both chances are given; an amount that is just reached counts', () => {
  const { keepingChance, allFinishedChance } = loadReading(weightedPoints([15.5, 16, 20], [1, 2, 1]), SPRINT);
  expect([keepingChance, allFinishedChance]).toEqual([0.75, 0.25]);
});

test('a floor between half points asks for the half point above', () => {
  const reading = loadReading(weightedPoints([10, 10.5], [1, 1]), { floorPoints: 10.4, cardPoints: 13 });
  expect(reading.keepingChance).toBe(0.5);
});

test('a sprint without cards is light', () => {
  expect(loadReading(weightedPoints([0], [1]), { floorPoints: 0, cardPoints: 0 }).signal).toBe('light');
});
