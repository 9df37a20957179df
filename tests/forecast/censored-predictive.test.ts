import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { censoredPredictive, type UsualAmount } from '../../src/forecast/censored-predictive.ts';
import { normalCdf } from '../../src/forecast/normal-distribution.ts';
import type { Interval } from '../../src/forecast/points-distribution.ts';
import { seededRandom } from './seeded-random.ts';
import { spreadsheet } from './spreadsheet.ts';

const USUAL: UsualAmount = { centrePoints: 30, levelSpread: 0.7 };
const CHANCES = [0.05, 0.2, 0.5, 0.8, 0.95];

function known(...points: number[]): Interval[] {
  return points.map((amount) => ({ low: amount, high: amount }));
}

function atLeast(points: number): Interval {
  return { low: points, high: Number.POSITIVE_INFINITY };
}

function quantiles(observations: readonly Interval[], usual = USUAL, refine = 1): number[] {
  const { quantile } = censoredPredictive(observations, usual, refine);
  return CHANCES.map(quantile);
}

const anyObservation = fc.oneof(
  fc.integer({ min: 0, max: 160 }).map((n): Interval => ({ low: n / 2, high: n / 2 })),
  fc.integer({ min: 0, max: 80 }).map(atLeast),
  fc.integer({ min: 1, max: 80 }).map((n): Interval => ({ low: 0, high: n })),
  fc
    .tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 1, max: 40 }))
    .map(([low, more]): Interval => ({ low, high: low + more })),
);
const someObservations = fc.array(anyObservation, { maxLength: 12 });

describe('the distribution of the next amount', () => {
  test('with much data is the classic prediction of a normal value, by a spreadsheet’s t distribution, for all but the odd', () => {
    // Of roots: mean ± t·s·√(1 + 1/n) with n − 1 degrees of freedom; one in twenty is odd, and centred at √30.
    const { normal } = seededRandom(20261119);
    const roots = Array.from({ length: 40 }, () => 5.5 + 0.8 * normal());
    const values = roots.map((root) => root ** 2);
    const list = roots.join(',');
    const { cdf } = censoredPredictive(known(...values), USUAL);
    const at = [16, 22, 30, 38, 46];
    const expected = spreadsheet(
      at.map(
        (points) =>
          `0.95*T.DIST((SQRT(${points})-AVERAGE(${list}))/(STDEV.S(${list})*SQRT(1+1/40)),39,TRUE())` +
          `+0.05*NORM.S.DIST((SQRT(${points})-SQRT(30))/SQRT(30),TRUE())`,
      ),
    );
    for (const [i, points] of at.entries()) {
      expect(Math.abs(cdf(points) - (expected[i] as number)), String(points)).toBeLessThan(0.015);
    }
  });

  test('agrees with brute force: a fine sum over every mean and deviation, with the beliefs of the documentation', () => {
    // A relative spread of 0.3, its logarithm give or take 0.47; one in twenty odd, as wide as the usual root is large.
    const centre = Math.sqrt(30);
    const density = (x: number, mean: number, deviation: number): number =>
      Math.exp(-0.5 * ((x - mean) / deviation) ** 2) / (deviation * Math.sqrt(2 * Math.PI));
    const bruteForce = (observations: readonly Interval[], points: number): number => {
      let [sum, total] = [0, 0];
      for (let z = -6; z <= 5; z += 0.1) {
        const deviation = 0.15 * centre * Math.exp(0.47 * z);
        for (let mean = 0; mean <= 14; mean += 0.02) {
          let weight = Math.exp(-0.5 * z ** 2) * density(mean, centre, 0.35 * centre);
          for (const { low, high } of observations) {
            const [from, to] = [Math.sqrt(low), Math.sqrt(high)];
            const of = (at: number, by: number): number =>
              low === high
                ? density(from, at, by)
                : (high === Number.POSITIVE_INFINITY ? 1 : normalCdf((to - at) / by)) -
                  (low === 0 ? 0 : normalCdf((from - at) / by));
            weight *= 0.95 * of(mean, deviation) + 0.05 * of(centre, centre);
          }
          total += weight;
          sum += weight * normalCdf((Math.sqrt(points) - mean) / deviation);
        }
      }
      return (0.95 * sum) / total + 0.05 * normalCdf((Math.sqrt(points) - centre) / centre);
    };
    for (const observations of [
      known(28),
      known(22, 31, 40),
      known(35, 28, 31, 44, 26, 300),
      [...known(35, 28, 0, 31), atLeast(40), { low: 20, high: 30 }],
    ]) {
      const { cdf } = censoredPredictive(observations, USUAL);
      for (const points of [10, 22, 28, 34, 50]) {
        expect(Math.abs(bruteForce(observations, points) - cdf(points)), String(points)).toBeLessThan(0.003);
      }
    }
  });

  test('one odd amount among twelve bends it by little, however odd', () => {
    const usual = [28, 33, 30, 29, 31, 32, 27, 30, 33, 28, 31];
    const plain = quantiles(known(...usual, 30));
    for (const odd of [0, 300, 999]) {
      const bent = quantiles(known(...usual, odd));
      for (const [i, got] of bent.entries())
        expect(Math.abs(got / (plain[i] as number) - 1)).toBeLessThan(0.03);
    }
  });

  test.each<[string, Interval[]]>([
    ['nothing', []],
    ['one amount', known(25)],
    ['equal amounts', known(...Array.from({ length: 12 }, () => 20))],
    ['scattered amounts', known(5, 60, 30, 12, 44)],
    ['amounts of 0', known(0, 0, 0)],
    ['lower bounds alone', [atLeast(20), atLeast(25), atLeast(22), atLeast(30)]],
    ['bounds and amounts', [...known(22, 28), atLeast(30), { low: 0, high: 25 }, { low: 20, high: 31 }]],
    ['amounts three times what is usual', known(90, 95, 85, 92)],
  ])(
    'knowing %s, a four times finer grid moves no quantile by more than half a percent',
    (_, observations) => {
      const fine = quantiles(observations, USUAL, 4);
      for (const [i, got] of quantiles(observations).entries()) {
        const off = Math.abs(got - (fine[i] as number));
        expect(off, `${CHANCES[i]}: ${got}, ${fine[i]}`).toBeLessThanOrEqual(
          0.005 * (fine[i] as number) + 0.01,
        );
      }
    },
  );

  test('is wide with little data and narrows with more', () => {
    const width = (observations: readonly Interval[]): number => {
      const [, low, , high] = quantiles(observations) as [number, number, number, number];
      return high - low;
    };
    const widths = [0, 1, 3, 12].map((n) =>
      width(known(...[28, 33, 30].concat([29, 31, 32, 27, 30, 33, 28, 31, 29]).slice(0, n))),
    );
    expect(widths).toEqual(widths.toSorted((a, b) => b - a));
    expect(widths[0]).toBeGreaterThan(3 * (widths[3] as number));
  });

  test('an amount of which nothing is known changes nothing', () => {
    const plain = quantiles(known(25, 35));
    for (const [i, got] of quantiles([...known(25, 35), atLeast(0)]).entries()) {
      expect(got).toBeCloseTo(plain[i] as number, 6);
    }
  });

  test('a lower bound lifts the answer, an upper bound lowers it, and the more the farther it lies out', () => {
    const median = (more: readonly Interval[]): number => quantiles([...known(25, 30), ...more])[2] as number;
    const lifted = [20, 30, 40].map((points) => median([atLeast(points)]));
    const lowered = [40, 30, 20].map((points) => median([{ low: 0, high: points }]));
    expect([median([]), ...lifted]).toEqual([median([]), ...lifted].toSorted((a, b) => a - b));
    expect([median([]), ...lowered]).toEqual([median([]), ...lowered].toSorted((a, b) => b - a));
    expect((lifted[2] as number) - (lowered[2] as number)).toBeGreaterThan(3);
  });

  test('is the same on any scale', () => {
    fc.assert(
      fc.property(someObservations, fc.integer({ min: 2, max: 9 }), (observations, times) => {
        const scaled = observations.map(({ low, high }) => ({ low: low * times, high: high * times }));
        const plain = quantiles(observations);
        for (const [i, got] of quantiles(scaled, { ...USUAL, centrePoints: 30 * times }).entries()) {
          expect(Math.abs(got - times * (plain[i] as number))).toBeLessThan(1e-6 * (1 + got));
        }
      }),
      { seed: 20261120, numRuns: 15 },
    );
  });

  test('is a distribution for all observations: it rises from 0 to 1 and its quantiles turn it round', () => {
    fc.assert(
      fc.property(someObservations, (observations) => {
        const { cdf, quantile } = censoredPredictive(observations, USUAL);
        const chances = [-1, 0, 5, 10, 20, 40, 80, 160, 1e6].map(cdf);
        expect(chances).toEqual(chances.toSorted((a, b) => a - b));
        expect(chances[0]).toBe(0);
        expect(chances.at(-1)).toBeGreaterThan(1 - 1e-9);
        for (const chance of CHANCES) {
          const points = quantile(chance);
          expect(points).toBeGreaterThanOrEqual(0);
          if (points > 0) expect(Math.abs(cdf(points) - chance)).toBeLessThan(1e-6);
          else expect(cdf(0)).toBeGreaterThanOrEqual(chance);
        }
      }),
      { seed: 20261121, numRuns: 25 },
    );
  });

  test('an observation beyond all reason gives an answer and no NaN', () => {
    for (const odd of [known(990)[0], atLeast(990), { low: 900, high: 990 }] as Interval[]) {
      for (const got of quantiles([...known(10, 10, 10, 10), odd])) {
        expect(Number.isFinite(got)).toBe(true);
        expect(got).toBeLessThan(2000);
      }
    }
  });

  test('is refused a usual amount of 0, and quantiles outside 0 to 1', () => {
    expect(() => censoredPredictive([], { centrePoints: 0, levelSpread: 0.7 })).toThrow(RangeError);
    expect(() => censoredPredictive([], USUAL).quantile(1)).toThrow(RangeError);
    expect(() => censoredPredictive([], USUAL).quantile(-0.1)).toThrow(RangeError);
  });
});
