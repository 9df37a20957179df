import { expect, test } from 'vitest';
import type { ControlChart } from '../../src/forecast/control-chart.ts';
import { ratioChart } from '../../src/forecast/ratio-chart.ts';

/** Wild enough for limits beyond what a share can be. */
const WILD = [0, 1, 0, 1, 0, 1, 0, 1];

test('limits of a share end at 0 and 100%, those of other ratios where they can', () => {
  expect((ratioChart('keptShare', WILD) as ControlChart).limits).toEqual({ low: 0, high: 1 });
  const pulledIn = (ratioChart('pullInRatio', WILD) as ControlChart).limits;
  expect(pulledIn.low).toBe(0);
  expect(pulledIn.high).toBeGreaterThan(2);
  const accuracy = (ratioChart('estimateAccuracy', WILD) as ControlChart).limits;
  expect(accuracy.low).toBeLessThan(-1);
  expect(accuracy.high).toBe(1);
});

test('with fewer than eight values there is none, and it says so', () => {
  expect(ratioChart('keptShare', WILD.slice(1))).toHaveProperty('undefined');
});
