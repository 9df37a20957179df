import fc from 'fast-check';
import { expect, test } from 'vitest';
import { greatest } from '../../src/forecast/beta-binomial-fit.ts';

test('finds the peak of a lopsided hill to 1e-6, wherever it lies between the ends', () => {
  fc.assert(
    fc.property(fc.double({ min: -5, max: 5, noNaN: true }), (peak) => {
      const height = (x: number): number => (x < peak ? 3 * (x - peak) : peak - x);
      expect(Math.abs(greatest(height, -6, 7) - peak)).toBeLessThan(1e-6);
    }),
    { seed: 20261109 },
  );
});

test('ends at an end when the hill rises all the way', () => {
  expect(greatest((x) => x, 0, 4)).toBeCloseTo(4, 6);
  expect(greatest((x) => -x, 1, 4)).toBeCloseTo(1, 6);
});
