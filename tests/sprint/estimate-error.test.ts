import { expect, test } from 'vitest';
import { estimateErrorPoints, plainEstimateErrorPoints } from '../../src/sprint/estimate-error.ts';
import { DEFAULT_SCALE } from '../../src/sprint/scale.ts';
import { aCard } from './sprint-facts.ts';

function sized(estimatePoints: number, trueSizePoints: number) {
  return { card: aCard({ estimatePoints }), trueSizePoints };
}

test.each([
  // estimate, true size, error, plain error
  [5, 5, 0, 0],
  [5, 4, 0, 1],
  [5, 6, 0, 1],
  [5, 6.5, 1.5, 1.5],
  [5, 3.5, 1.5, 1.5],
  [8, 10, 0, 2],
  [8, 12, 4, 4],
  [21, 19, 0, 2],
  [4, 4, 0, 0],
  [4, 5, 1, 1],
])(
  'an estimate of %s for a true size of %s errs by %s points, plainly by %s',
  (estimate, size, error, plain) => {
    expect(estimateErrorPoints(sized(estimate, size), DEFAULT_SCALE)).toBe(error);
    expect(plainEstimateErrorPoints(sized(estimate, size))).toBe(plain);
  },
);

test('a size beyond the largest band of a custom scale errs by the whole distance', () => {
  expect(estimateErrorPoints(sized(4, 5), [1, 2, 4])).toBe(0);
  expect(estimateErrorPoints(sized(4, 5.5), [1, 2, 4])).toBe(1.5);
});
