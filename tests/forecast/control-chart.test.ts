import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ControlChart } from '../../src/forecast/control-chart.ts';
import { controlChart, LEAST_CHART_VALUES } from '../../src/forecast/control-chart.ts';
import { undefinedBecause } from '../../src/sprint/undefined-value.ts';
import { seededRandom } from './seeded-random.ts';
import { spreadsheet } from './spreadsheet.ts';

/** NIST/SEMATECH e-Handbook, 6.3.2.2 (pmc322; transcribed in public files, recomputed). */
const FLOWRATES = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];

function chart(...args: Parameters<typeof controlChart>): ControlChart {
  return controlChart(...args) as ControlChart;
}

const someValues = fc.array(
  fc.integer({ min: 0, max: 200 }).map((n) => n / 100),
  {
    minLength: LEAST_CHART_VALUES,
    maxLength: 40,
  },
);

describe('a control chart', () => {
  test('has the published mean, mean moving range and limits of NIST’s ten flowrates', () => {
    const { mean, meanMovingRange, limits, signals } = chart(FLOWRATES);
    expect(mean).toBeCloseTo(50.81, 10);
    expect(meanMovingRange).toBeCloseTo(1.8778, 4);
    expect(limits.high).toBeCloseTo(55.8041, 4);
    expect(limits.low).toBeCloseTo(45.8159, 4);
    expect(signals).toEqual([]);
  });

  test('agrees with a spreadsheet engine to 1e-9 on generated histories', () => {
    const histories = fc.sample(someValues, { seed: 20261113, numRuns: 60 });
    const formulas = histories.flatMap((values) => {
      const ranges = values.slice(1).map((value, i) => `ABS(${value}-${values[i]})`);
      const mean = `AVERAGE(${values.join(',')})`;
      return [mean, `${mean}+3*AVERAGE(${ranges.join(',')})/1.128`];
    });
    const expected = spreadsheet(formulas);
    for (const [i, values] of histories.entries()) {
      const { mean, limits } = chart(values);
      expect(Math.abs(mean - (expected[2 * i] as number))).toBeLessThan(1e-9);
      expect(Math.abs(limits.high - (expected[2 * i + 1] as number))).toBeLessThan(1e-9);
    }
  });

  test('a value outside the limits is a signal, and the latest one is marked as such', () => {
    const { signals, latest } = chart([10, 14, 9, 15, 10, 14, 9, 15, 10, 14, 30]);
    expect(signals).toEqual([{ kind: 'above the limits', index: 10 }]);
    expect(latest).toEqual({ index: 10, value: 30, reading: 'signal', kinds: ['above the limits'] });
  });

  test('an earlier signal does not colour the latest value', () => {
    const { signals, latest } = chart([10, 11, 10, 9, 10, 1, 10, 11, 10, 9, 10, 11]);
    expect(signals).toEqual([{ kind: 'below the limits', index: 5 }]);
    expect(latest.reading).toBe('ordinary variation');
  });

  test('the eighth value in a row on one side of the mean is a signal, the seventh is not', () => {
    const lower = [1.0, 1.1, 0.9, 1.0, 1.1, 0.9, 1.0];
    const higher = [1.3, 1.4, 1.2, 1.3, 1.4, 1.2, 1.3];
    expect(chart([...lower, ...higher]).signals).toEqual([]);
    expect(chart([...lower, ...higher, 1.4]).signals).toEqual([{ kind: 'run above the mean', index: 14 }]);
    expect(chart([...higher, ...lower, 1.0, 1.1]).signals).toEqual([
      { kind: 'run below the mean', index: 14 },
      { kind: 'run below the mean', index: 15 },
    ]);
  });

  test('a value on the mean ends a run', () => {
    // The mean is exactly 5.
    const { mean, signals } = chart([4, 3, 4, 3, 5, 4, 3, 4, 3, 6, 7, 6, 7, 5, 6, 7, 6, 7]);
    expect(mean).toBe(5);
    expect(signals).toEqual([]);
  });

  test('equal values are ordinary, also when their mean is rounded', () => {
    const { limits, signals, latest } = chart(Array.from({ length: 11 }, () => 0.1));
    expect(limits.low).toBeCloseTo(0.1, 12);
    expect(limits.high).toBeCloseTo(0.1, 12);
    expect(signals).toEqual([]);
    expect(latest.reading).toBe('ordinary variation');
  });

  test('limits are cut off where the number itself ends', () => {
    const shares = [0.9, 1, 0.8, 1, 0.9, 1, 0.7, 1];
    expect(chart(shares).limits.high).toBeGreaterThan(1);
    expect(chart(shares, { low: 0, high: 1 }).limits.high).toBe(1);
    expect(chart([0.1, 0, 0.2, 0, 0.1, 0, 0.3, 0], { low: 0 }).limits.low).toBe(0);
  });

  test('undefined values are passed over, and places are those of the list given', () => {
    const none = undefinedBecause('no-commitment');
    const { values, mean, latest } = chart([none, 1, 2, 1, 2, none, 1, 2, 1, 2, none]);
    expect([values, mean]).toEqual([8, 1.5]);
    expect(latest).toMatchObject({ index: 9, value: 2 });
  });

  test.each([0, 1, 7])('with %i values it says what is missing', (count) => {
    expect(controlChart(Array.from({ length: count }, (_, i) => i))).toEqual({
      undefined: { code: 'no-signal-yet', needed: 8, known: count },
    });
  });

  test('below eight values a lone outlier could not be seen; from eight on it is', () => {
    // Reckoned by hand: n − 1 equal values and one d higher in their midst: d·(n−1)/n beyond the mean, limit
    // 3·(2d/(n−1))/1.128 beyond it.
    const outlierIsOutside = (n: number): boolean => (n - 1) / n > (3 * 2) / (n - 1) / 1.128;
    expect([6, 7, 8, 9].map(outlierIsOutside)).toEqual([false, false, true, true]);
    const inTheMidst = [1, 1, 1, 1, 9, 1, 1, 1];
    expect(chart(inTheMidst).signals).toEqual([{ kind: 'above the limits', index: 4 }]);
  });

  test('neither moving nor stretching all values changes what is a signal', () => {
    fc.assert(
      fc.property(
        someValues,
        fc.integer({ min: -9, max: 9 }),
        fc.integer({ min: 1, max: 50 }),
        (values, by, times) => {
          const moved = chart(values.map((value) => value * times + by));
          expect(moved.signals).toEqual(chart(values).signals);
          expect(moved.mean).toBeCloseTo(chart(values).mean * times + by, 8);
        },
      ),
      { seed: 20261114 },
    );
  });

  test('of a team where nothing changes, few latest values are called signals', () => {
    // Normal values: both rules together raise a false alarm in about 1% of sprints (1/128 for the run alone).
    const { normal } = seededRandom(20261115);
    const histories = 4000;
    let alarms = 0;
    for (let i = 0; i < histories; i += 1) {
      const { latest } = chart(Array.from({ length: 20 }, () => 0.8 + 0.1 * normal()));
      if (latest.reading === 'signal') alarms += 1;
    }
    expect(alarms / histories).toBeGreaterThan(0.002);
    expect(alarms / histories).toBeLessThan(0.025);
  });
});
