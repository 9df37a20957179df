import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ControlChart } from '../../src/forecast/control-chart.ts';
import { CHANGE_SPRINTS, controlChart, LEAST_CHART_VALUES } from '../../src/forecast/control-chart.ts';
import { undefinedBecause } from '../../src/sprint/undefined-value.ts';
import { spreadsheet } from './spreadsheet.ts';

/** NIST/SEMATECH e-Handbook, 6.3.2.2 (pmc322; transcribed in public files, recomputed). */
const FLOWRATES = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];

function chart(...args: Parameters<typeof controlChart>): ControlChart {
  return controlChart(...args) as ControlChart;
}

const someValues = fc.array(fc.integer({ min: 0, max: 200 }), {
  minLength: LEAST_CHART_VALUES,
  maxLength: 40,
});

/** So short and alike that no rise or fall can be in them. */
const fewValues = fc.array(fc.integer({ min: 0, max: 200 }), {
  minLength: LEAST_CHART_VALUES,
  maxLength: 11,
});

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
    const histories = fc.sample(fewValues, { seed: 20261113, numRuns: 60 });
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

  test('a value far beyond all others is a signal, and the latest one is marked as such', () => {
    // By hand: of the ten others the median is 12 and the furthest 15, so a signal lies above 12 + 3 · (1 + 50 ÷ 10) = 30.
    const usual = [10, 14, 9, 15, 10, 14, 9, 15, 10, 14];
    expect(chart([...usual, 31]).signals).toEqual([{ kind: 'above the limits', index: 10 }]);
    expect(chart([...usual, 31]).latest).toMatchObject({ reading: 'signal', kinds: ['above the limits'] });
    expect(chart([...usual, 30]).latest).toMatchObject({ reading: 'unusual', kinds: [] });
    expect(chart([...usual, 22]).latest.reading).toBe('ordinary variation');
  });

  test('an earlier signal does not colour the latest value', () => {
    const { signals, latest } = chart([10, 11, 10, 9, 10, 1, 10, 11, 10, 9, 10, 11]);
    expect(signals).toEqual([{ kind: 'below the limits', index: 5 }]);
    expect(latest.reading).toBe('ordinary variation');
  });

  test('the first value that isn’t 0 is unusual, and no signal: nothing is known of what such a value can be', () => {
    expect(chart([0, 0, 0, 0, 0, 0, 0, 0, 0, 0.4]).latest.reading).toBe('unusual');
  });

  test('six sprints that differ from those before are a rise or fall, and the chart begins anew with them', () => {
    const low = [1.0, 1.1, 0.9, 1.05, 1.15, 0.95, 1.0];
    const high = [1.1, 1.3, 1.4, 1.25, 1.35, 1.45];
    expect(chart([...low, ...high.slice(0, 5)]).signals).toEqual([]);
    const rise = chart([...low, ...high]);
    expect(rise.signals).toEqual([{ kind: 'rise', index: 12 }]);
    expect(rise.latest).toMatchObject({ reading: 'signal', kinds: ['rise'] });
    expect(rise.values).toBe(CHANGE_SPRINTS);
    expect(rise.mean).toBeCloseTo(7.85 / 6, 12);
    expect(rise.meanBefore).toBeCloseTo(7.15 / 7, 12);
    // Seen once: one sprint later it is how the team is.
    const later = chart([...low, ...high, 1.35]);
    expect(later.signals).toEqual(rise.signals);
    expect(later.latest.reading).toBe('ordinary variation');
    const fall = chart([...high, 1.3, ...low.slice(0, 6)]);
    expect(fall.signals).toEqual([{ kind: 'fall', index: 12 }]);
  });

  test('a change of less than five percentage points is none, however sure it is', () => {
    const before = [1, 1, 1, 1, 1, 1, 1, 1];
    expect(chart([...before, ...Array(6).fill(0.96)]).signals).toEqual([]);
    expect(chart([...before, ...Array(6).fill(0.94)]).signals).toEqual([{ kind: 'fall', index: 12 }]);
    expect(chart([...before, 0.96]).latest.reading).toBe('ordinary variation');
  });

  test('equal values are ordinary, also when their mean is rounded', () => {
    const { limits, signals, latest } = chart(Array.from({ length: 11 }, () => 0.1));
    expect(limits.low).toBeCloseTo(0.05, 9);
    expect(limits.high).toBeCloseTo(0.15, 9);
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
});
