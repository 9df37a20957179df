import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type LoadedSprint, loadReading } from '../../src/forecast/load-signal.ts';
import { weightedPoints } from '../../src/forecast/weighted-points.ts';
import { type Supposed, whatIf } from '../../src/forecast/what-if.ts';

const NOTHING: Supposed = { without: undefined, morePoints: 0, timeShare: 1 };
const SPRINT: LoadedSprint = {
  sizes: [5, 8, 5, 3, 3],
  finishedPoints: 5,
  open: [
    { estimatePoints: 8, isCommitted: true, isBegun: true },
    { estimatePoints: 5, isCommitted: true, isBegun: false },
    { estimatePoints: 3, isCommitted: true, isBegun: false },
    { estimatePoints: 3, isCommitted: false, isBegun: false },
  ],
  missingPoints: 12,
};
const VELOCITY = weightedPoints([5, 10, 13, 16, 18, 21, 24], [1, 2, 2, 3, 3, 3, 3]);
/** What could be finished with enough to do. */
const BEYOND = (points: number): number => Math.min(1, Math.max(0, (26 - points) / 24));
const supposed = (change: Partial<Supposed>) => whatIf(SPRINT, VELOCITY, BEYOND, { ...NOTHING, ...change });

test('with nothing supposed the chances are those that the status tells', () => {
  const told = loadReading(VELOCITY, SPRINT);
  expect(supposed({}).kept).toBeCloseTo(told.keepingChance, 12);
  expect(supposed({}).all).toBeCloseTo(told.allFinishedChance, 12);
});

test('without a pulled-in card both chances are better; without a committed one only finishing the rest is', () => {
  const now = supposed({});
  const withoutPulledIn = supposed({ without: 3 });
  expect(withoutPulledIn.kept).toBeGreaterThan(now.kept);
  expect(withoutPulledIn.all).toBeGreaterThan(now.all);
  // 12 of 16 committed points are missing: without the card of 8 it can't be reached any more.
  const withoutLarge = supposed({ without: 0 });
  expect(withoutLarge.kept).toBe(0);
  expect(withoutLarge.all).toBeGreaterThan(now.all);
});

test('with less time or more work no chance is better, and with no time nothing more gets finished', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const points = fc.integer({ min: 0, max: 20 }).map((halves) => halves / 2);
  fc.assert(
    fc.property(share, share, points, points, (a, b, c, d) => {
      const worse = supposed({ timeShare: Math.min(a, b), morePoints: Math.max(c, d) });
      const better = supposed({ timeShare: Math.max(a, b), morePoints: Math.min(c, d) });
      expect(worse.all).toBeLessThanOrEqual(better.all + 1e-12);
      expect(supposed({ timeShare: Math.min(a, b) }).kept).toBeLessThanOrEqual(
        supposed({ timeShare: Math.max(a, b) }).kept + 1e-12,
      );
    }),
  );
  expect(supposed({ timeShare: 0 })).toEqual({ kept: 0, all: 0 });
});
