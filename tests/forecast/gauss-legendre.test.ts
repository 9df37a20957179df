import { expect, test } from 'vitest';
import { gaussLegendre } from '../../src/forecast/gauss-legendre.ts';

test('has the known places and weights, moved to 0 to 1 (Abramowitz and Stegun, table 25.4; memory)', () => {
  const [first, middle, last] = gaussLegendre(3);
  expect(first?.at).toBeCloseTo((1 - 0.774596669241483) / 2, 14);
  expect(middle?.at).toBeCloseTo(0.5, 14);
  expect(last?.weight).toBeCloseTo(0.555555555555556 / 2, 14);
  expect(middle?.weight).toBeCloseTo(0.888888888888889 / 2, 14);
});

test.each([1, 2, 7, 50, 100])('%i places give the integral of every power that they promise', (n) => {
  const points = gaussLegendre(n);
  for (let power = 0; power <= 2 * n - 1; power += 1) {
    const sum = points.reduce((total, { at, weight }) => total + weight * at ** power, 0);
    expect(sum).toBeCloseTo(1 / (power + 1), 12);
  }
});
