import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { betaCdf, betaQuantile } from '../../src/forecast/beta-distribution.ts';
import { logGamma } from '../../src/forecast/log-gamma.ts';
import { spreadsheet } from './spreadsheet.ts';

describe('the logarithm of the gamma function', () => {
  test('Γ(n+1) is n!', () => {
    let factorial = 1;
    for (let n = 1; n <= 20; n += 1) {
      factorial *= n;
      expect(logGamma(n + 1)).toBeCloseTo(Math.log(factorial), 12);
    }
  });

  test('Γ(½)² is π', () => {
    expect(Math.exp(2 * logGamma(0.5))).toBeCloseTo(Math.PI, 12);
  });

  test('agrees with a spreadsheet engine to 1e-9, in relation to its size', () => {
    const xs = [0.01, 0.3, 0.999, 1.5, 3.3, 14.9, 15.1, 80, 1234.5];
    const expected = spreadsheet(xs.map((x) => `GAMMALN(${x})`));
    for (const [i, x] of xs.entries()) {
      const value = expected[i] as number;
      expect(Math.abs(logGamma(x) - value), String(x)).toBeLessThan(1e-9 * Math.max(1, Math.abs(value)));
    }
  });

  test.each([0, -1, Number.NaN])('is refused for %s', (x) => {
    expect(() => logGamma(x)).toThrow(RangeError);
  });
});

const anyShape = fc.double({ min: 0.2, max: 60, noNaN: true });

describe('the beta distribution', () => {
  test.each([
    // Computed with SciPy 1.17.1, scipy.special.betainc.
    [1e-6, 0.5, 1e6, 0.8427008448381964],
    [2e-6, 2, 1e6, 0.5939949622804063],
    [1e-6, 2.5, 1e6, 0.15085530983853124],
    [1e-5, 10, 1e6, 0.542082170964244],
    [0.1667, 2e5, 1e6, 0.5392397755473796],
    [0.5001, 1e6, 1e6, 0.6113512821376899],
    [0.999997, 1e6, 3, 0.4231884008183003],
  ])('at %s with α = %s and β = %s it is %s', (x, alpha, beta, expected) => {
    expect(Math.abs(betaCdf(x, { alpha, beta }) / expected - 1)).toBeLessThan(1e-10);
  });

  // Newcombe 1998, Statistics in Medicine 17, Table I (transcribed in public files, recomputed).
  test.each<[number, number, number, number]>([
    [81, 263, 0.2527, 0.3676],
    [15, 148, 0.0578, 0.1617],
    [1, 29, 0.0009, 0.1776],
  ])('gives the published Clopper-Pearson interval of %i in %i', (k, n, low, high) => {
    expect(betaQuantile(0.025, { alpha: k, beta: n - k + 1 })).toBeCloseTo(low, 4);
    expect(betaQuantile(0.975, { alpha: k + 1, beta: n - k })).toBeCloseTo(high, 4);
  });

  test('gives the published upper Clopper-Pearson bound of 0 in 20', () => {
    // Newcombe 1998, Table I.
    expect(betaQuantile(0.975, { alpha: 1, beta: 20 })).toBeCloseTo(0.1684, 4);
  });

  test('gives the published Jeffreys interval of 37 in 43', () => {
    // Documentation of R's binomial intervals (primary text read).
    const parameters = { alpha: 37.5, beta: 6.5 };
    expect(betaQuantile(0.025, parameters)).toBeCloseTo(0.734811, 7);
    expect(betaQuantile(0.975, parameters)).toBeCloseTo(0.9395927, 7);
  });

  test('of whole shapes is the upper tail of a binomial, by a spreadsheet engine to 1e-9', () => {
    const cases = fc.sample(
      fc.tuple(fc.double({ min: 0.01, max: 0.99, noNaN: true }), fc.integer({ min: 1, max: 60 }), fc.nat(60)),
      { seed: 20261102, numRuns: 200 },
    );
    const expected = spreadsheet(
      cases.map(([x, alpha, more]) => `1-BINOM.DIST(${alpha - 1},${alpha + more},${x},TRUE())`),
    );
    for (const [i, [x, alpha, more]] of cases.entries()) {
      const difference = Math.abs(betaCdf(x, { alpha, beta: more + 1 }) - (expected[i] as number));
      expect(difference, `${x} ${alpha} ${more + 1}`).toBeLessThan(1e-9);
    }
  });

  test('of any shapes agrees with a spreadsheet engine, whose own function stops at about 1e-7', () => {
    const cases = fc.sample(fc.tuple(fc.double({ min: 0.01, max: 0.99, noNaN: true }), anyShape, anyShape), {
      seed: 20261102,
      numRuns: 200,
    });
    const expected = spreadsheet(cases.map(([x, alpha, beta]) => `BETA.DIST(${x},${alpha},${beta},TRUE())`));
    for (const [i, [x, alpha, beta]] of cases.entries()) {
      const difference = Math.abs(betaCdf(x, { alpha, beta }) - (expected[i] as number));
      expect(difference, `${x} ${alpha} ${beta}`).toBeLessThan(1e-7);
    }
  });

  test('of shapes ½ and ½ is the arcsine law', () => {
    for (const x of [0.001, 0.2, 0.5, 0.83, 0.999]) {
      const closedForm = (2 / Math.PI) * Math.asin(Math.sqrt(x));
      expect(betaCdf(x, { alpha: 0.5, beta: 0.5 })).toBeCloseTo(closedForm, 12);
    }
  });

  test('its mirror image is the distribution of the failures', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }),
        anyShape,
        anyShape,
        (x, alpha, beta) => {
          const both = betaCdf(x, { alpha, beta }) + betaCdf(1 - x, { alpha: beta, beta: alpha });
          expect(Math.abs(both - 1)).toBeLessThan(1e-10);
        },
      ),
      { seed: 20261103 },
    );
  });

  test('a quantile’s chance is the chance asked for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        (chance, alpha, beta) => {
          const x = betaQuantile(chance, { alpha, beta });
          expect(Math.abs(betaCdf(x, { alpha, beta }) - chance)).toBeLessThan(1e-9);
        },
      ),
      { seed: 20261104, numRuns: 50 },
    );
  });

  test('shares lie from 0 to 1', () => {
    const parameters = { alpha: 2, beta: 3 };
    expect([betaCdf(-1, parameters), betaCdf(0, parameters), betaCdf(1, parameters)]).toEqual([0, 0, 1]);
    expect([betaQuantile(0, parameters), betaQuantile(1, parameters)]).toEqual([0, 1]);
    expect(() => betaQuantile(1.1, parameters)).toThrow(RangeError);
  });
});
