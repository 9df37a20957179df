import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { normalCdf, normalDensity, normalQuantile } from '../../src/forecast/normal-distribution.ts';
import { spreadsheet } from './spreadsheet.ts';

describe('the normal distribution', () => {
  test('agrees with a spreadsheet engine to 1e-9 from −6 to 6', () => {
    const zs = Array.from({ length: 97 }, (_, i) => -6 + i / 8);
    const expected = spreadsheet(zs.map((z) => `NORM.S.DIST(${z},TRUE())`));
    for (const [i, z] of zs.entries()) {
      expect(Math.abs(normalCdf(z) - (expected[i] as number)), String(z)).toBeLessThan(1e-9);
    }
  });

  test('its quantiles agree with a spreadsheet engine to 1e-9', () => {
    const chances = [0.001, 0.025, 0.05, 0.1, 0.2, 0.37, 0.5, 0.8, 0.9, 0.975, 0.999];
    const expected = spreadsheet(chances.map((chance) => `NORM.S.INV(${chance})`));
    for (const [i, chance] of chances.entries()) {
      expect(Math.abs(normalQuantile(chance) - (expected[i] as number)), String(chance)).toBeLessThan(1e-9);
    }
  });

  test('its far tails keep their relative precision: they lie within the bounds of Mills’ ratio', () => {
    // Gordon 1941: z/(1+z²) < tail ÷ density < 1/z for z > 0.
    for (let z = 2; z < 37; z += 0.25) {
      const ratio = normalCdf(-z) / normalDensity(z);
      expect(ratio, String(z)).toBeGreaterThan(z / (1 + z * z));
      expect(ratio, String(z)).toBeLessThan(1 / z);
    }
  });

  test.each([
    // Computed with SciPy 1.17.1, scipy.special.ndtri.
    [1e-10, -6.361340902404056],
    [1e-20, -9.262340089798409],
    [1e-100, -21.273453560965322],
    [1e-300, -37.0470962993612],
    [Number.MIN_VALUE, -38.467405617144344],
  ])('the quantile at %s is %s', (chance, expected) => {
    expect(Math.abs(normalQuantile(chance) / expected - 1)).toBeLessThan(1e-14);
  });

  test('agrees with a series in the middle and a continued fraction in the tails, both Laplace’s', () => {
    // Abramowitz and Stegun 26.2.11 and 26.2.14 (memory).
    const series = (z: number): number => {
      let [term, sum] = [z, z];
      for (let k = 3; Math.abs(term) > 1e-18 * Math.abs(sum); k += 2) {
        term *= (z * z) / k;
        sum += term;
      }
      return 0.5 + normalDensity(z) * sum;
    };
    const tail = (z: number): number => {
      let hazard = z;
      for (let k = 400; k >= 1; k -= 1) hazard = z + k / hazard;
      return normalDensity(z) / hazard;
    };
    for (let z = -3; z <= 3; z += 1 / 64)
      expect(Math.abs(normalCdf(z) - series(z)), String(z)).toBeLessThan(2e-15);
    for (let z = 2.5; z <= 37; z += 1 / 64) {
      expect(Math.abs(normalCdf(-z) / tail(z) - 1), String(z)).toBeLessThan(3e-14);
      expect(Math.abs(normalCdf(z) - (1 - tail(z))), String(z)).toBeLessThan(1e-15);
    }
  });

  test('both sides add up to 1, and a quantile’s chance is the chance asked for', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1 - 1e-12, noNaN: true }), (chance) => {
        const z = normalQuantile(chance);
        expect(Math.abs(normalCdf(z) - chance)).toBeLessThan(1e-13);
        expect(Math.abs(normalCdf(z) + normalCdf(-z) - 1)).toBeLessThan(1e-13);
      }),
      { seed: 20261101 },
    );
  });

  test('nothing lies beyond infinity', () => {
    expect(normalCdf(Number.POSITIVE_INFINITY)).toBe(1);
    expect(normalCdf(Number.NEGATIVE_INFINITY)).toBe(0);
  });

  test.each([0, 1, -0.1, Number.NaN])('has no quantile for a chance of %s', (chance) => {
    expect(() => normalQuantile(chance)).toThrow(RangeError);
  });
});
