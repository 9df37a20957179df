import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jointChance, jointCurve, jointDates, type PartForecast } from '../../src/forecast/joint-release.ts';
import { dayPlus } from '../../src/sprint/calendar.ts';

const part = (chanceBySprint: readonly number[], change: Partial<PartForecast> = {}): PartForecast => ({
  startsOn: '2026-11-02',
  sprintLengthDays: 14,
  chanceBySprint,
  ...change,
});

/** Chances in whole sixteenths, which add up exactly. */
const sixteenths = fc.integer({ min: 0, max: 16 });

describe('the chance that all parts are finished', () => {
  test('is bounded by what joint distributions can do: every pair and triple of outcomes, counted', () => {
    // Sixteen equally likely worlds; a part of k sixteenths is finished in k of them. Which ones decides how often all
    // are: as few as the worlds allow when each takes worlds in which others aren't finished, as many when they nest.
    fc.assert(
      fc.property(fc.array(sixteenths, { minLength: 1, maxLength: 4 }), (counts) => {
        const nested = Math.min(...counts);
        // Unfinished worlds laid side by side cover as many worlds as they can.
        const unfinished = counts.reduce((sum, count) => sum + (16 - count), 0);
        const apart = Math.max(0, 16 - unfinished);
        const parts = counts.map((count) => part([0, count / 16]));
        expect(jointChance(parts, '2026-11-15')).toEqual({ least: apart / 16, most: nested / 16 });
      }),
    );
  });

  test('lies between its bounds in every joint distribution of two parts over eight worlds', () => {
    for (let one = 0; one < 256; one += 1) {
      for (let other = one; other < 256; other += 1) {
        const size = (set: number): number => set.toString(2).replaceAll('0', '').length;
        const { least, most } = jointChance(
          [part([0, size(one) / 8]), part([0, size(other) / 8])],
          '2026-11-15',
        );
        const all = size(one & other) / 8;
        if (all < least || all > most) throw new Error(`${one} and ${other}: ${all}`);
      }
    }
  });

  test('is that of the part where there is one, rises along the sprint, and stays after the last', () => {
    const only = [part([0, 0.5, 0.9])];
    expect(jointChance(only, '2026-11-01')).toEqual({ least: 0, most: 0 });
    expect(jointChance(only, '2026-11-08')).toEqual({ least: 0.25, most: 0.25 });
    expect(jointChance(only, '2026-11-29')).toEqual({ least: 0.9, most: 0.9 });
    expect(jointChance(only, '2030-01-01')).toEqual({ least: 0.9, most: 0.9 });
  });

  test('needs a part', () => {
    expect(() => jointChance([], '2026-11-15')).toThrow(RangeError);
  });
});

describe('the days by which all parts are finished', () => {
  test('are the first on which the bounds reach the chance, as looking at each day finds them', () => {
    const chances = fc
      .array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 8 })
      .map((list) => [0, ...list.toSorted((a, b) => a - b)]);
    const parts = fc.array(
      fc.record({
        startsOn: fc.integer({ min: 0, max: 30 }).map((days) => dayPlus('2026-11-02', days)),
        sprintLengthDays: fc.constantFrom(7, 14, 21),
        chanceBySprint: chances,
      }),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(parts, (some) => {
        for (const { chance, surely, soonest } of jointDates(some)) {
          const days = Array.from({ length: 230 }, (_, i) => dayPlus('2026-11-02', i));
          expect(surely).toBe(days.find((day) => jointChance(some, day).least >= chance));
          expect(soonest).toBe(days.find((day) => jointChance(some, day).most >= chance));
        }
      }),
      { numRuns: 60 },
    );
  });

  test('of simulated parts that hang together by a common cause hold at least as often as they say', () => {
    // Three parts, each finished after 2 + 6·u sprints, u even between 0 and 1, so the chance is (k − 2) ÷ 6. How much
    // of u is common to all runs from none to all; a fixed sequence in place of chance (Halton, bases 2, 3, 5 and 7).
    const chances = Array.from({ length: 9 }, (_, k) => Math.min(1, Math.max(0, (k - 2) / 6)));
    const [, promised] = jointDates([part(chances), part(chances), part(chances)]);
    const sprintsOf = (day: string | undefined): number => daysFrom('2026-11-02', day) / 14;
    for (const isCommon of [false, true]) {
      let held = { surely: 0, soonest: 0 };
      const runs = 4_000;
      for (let i = 1; i <= runs; i += 1) {
        const own = [2, 3, 5].map((base) => 2 + 6 * halton(i, isCommon ? 2 : base));
        const last = Math.max(...own);
        held = {
          surely: held.surely + Number(last <= sprintsOf(promised.surely)),
          soonest: held.soonest + Number(last <= sprintsOf(promised.soonest)),
        };
      }
      expect(held.surely / runs).toBeGreaterThanOrEqual(0.85);
      // Where they hang together fully, the soonest day is the one.
      if (isCommon) expect(held.soonest / runs).toBeCloseTo(0.85, 1);
      else expect(held.soonest / runs).toBeLessThan(0.7);
    }
  });

  test('are none where the forecasts don’t reach so far', () => {
    expect(jointDates([part([0, 0.6]), part([0, 0.6])])).toEqual([
      { chance: 0.5, surely: undefined, soonest: '2026-11-13' },
      { chance: 0.85, surely: undefined, soonest: undefined },
    ]);
  });

  test('are shown by a curve from nothing to the promise, of no more points than asked for', () => {
    const parts = [part([0, 0.2, 0.7, 0.95, 1]), part([0, 0.5, 0.9, 1], { startsOn: '2026-11-09' })];
    const curve = jointCurve(parts, 20);
    expect(curve.length).toBeLessThanOrEqual(21);
    expect(curve[0]).toEqual({ on: '2026-11-01', least: 0, most: 0 });
    expect(curve.at(-1)?.least).toBeGreaterThanOrEqual(0.85);
  });
});

function daysFrom(from: string, to: string | undefined): number {
  return (Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000 + 1;
}

function halton(index: number, base: number): number {
  let [result, share] = [0, 1];
  for (let i = index; i > 0; i = Math.floor(i / base)) {
    share /= base;
    result += share * (i % base);
  }
  return result;
}
