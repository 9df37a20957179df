import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ValuedSprint } from '../../src/forecast/value-growth.ts';
import { valueGrowth } from '../../src/forecast/value-growth.ts';
import { isDefined } from '../../src/sprint/undefined-value.ts';
import { spreadsheet } from './spreadsheet.ts';

function sprint(velocityPoints: number, recordedValue?: number): ValuedSprint {
  return { velocityPoints, recordedValue };
}

const anySprint = fc.record({
  velocityPoints: fc.integer({ min: 0, max: 80 }).map((n) => n / 2),
  recordedValue: fc.option(fc.integer({ min: -500, max: 5000 }), { nil: undefined }),
});

describe('value growth', () => {
  test('measures value and velocity by the same sprint', () => {
    expect(valueGrowth([sprint(10, 200), sprint(15, 400), sprint(20, 300)])).toEqual({
      baselineIndex: 0,
      sprints: [
        { valueGrowth: 1, velocityGrowth: 1, valuePerPointGrowth: 1 },
        { valueGrowth: 2, velocityGrowth: 1.5, valuePerPointGrowth: 2 / 1.5 },
        { valueGrowth: 1.5, velocityGrowth: 2, valuePerPointGrowth: 0.75 },
      ],
    });
  });

  test('begins with the first sprint that has both, from the velocity baseline on', () => {
    const before = { undefined: { code: 'before-valued-sprint' } };
    const { baselineIndex, sprints } = valueGrowth(
      [
        sprint(8, 100),
        sprint(10),
        sprint(0, 90),
        sprint(12, 0),
        sprint(12, -5),
        sprint(16, 100),
        sprint(20, 150),
      ],
      1,
    );
    expect(baselineIndex).toBe(5);
    expect(sprints[0]).toEqual({ valueGrowth: before, velocityGrowth: before, valuePerPointGrowth: before });
    expect(sprints[6]).toMatchObject({ valueGrowth: 1.5, velocityGrowth: 1.25 });
  });

  test('a sprint without a recorded value has a velocity growth and no other', () => {
    const none = { undefined: { code: 'no-value' } };
    expect(valueGrowth([sprint(10, 200), sprint(15)]).sprints[1]).toEqual({
      valueGrowth: none,
      velocityGrowth: 1.5,
      valuePerPointGrowth: none,
    });
  });

  test('where nothing was finished, value by point does not exist', () => {
    expect(valueGrowth([sprint(10, 200), sprint(0, 100)]).sprints[1]).toEqual({
      valueGrowth: 0.5,
      velocityGrowth: 0,
      valuePerPointGrowth: { undefined: { code: 'nothing-finished' } },
    });
  });

  test('a loss after a gain is a growth below 0', () => {
    expect(valueGrowth([sprint(10, 200), sprint(10, -50)]).sprints[1]?.valueGrowth).toBe(-0.25);
  });

  test.each([
    ['no sprint', []],
    ['no value', [sprint(10), sprint(12)]],
    ['no value above 0', [sprint(10, 0), sprint(12, -3)]],
    ['no velocity', [sprint(0, 100)]],
  ])('with %s there is no baseline, and the reason says so', (_, sprints) => {
    const result = valueGrowth(sprints);
    expect(result.baselineIndex).toBeUndefined();
    expect(result.sprints).toHaveLength(sprints.length);
    for (const growth of result.sprints) {
      expect(growth.valueGrowth).toEqual({
        undefined: { code: 'no-valued-sprint' },
      });
    }
  });

  test('agrees with a spreadsheet engine to 1e-9 on generated histories', () => {
    const histories = fc.sample(fc.array(anySprint, { minLength: 2, maxLength: 12 }), {
      seed: 20261116,
      numRuns: 100,
    });
    const checks: { got: number; formula: string }[] = [];
    for (const sprints of histories) {
      const { baselineIndex, sprints: growths } = valueGrowth(sprints);
      if (baselineIndex === undefined) continue;
      const base = sprints[baselineIndex] as ValuedSprint;
      for (const [i, growth] of growths.entries()) {
        if (!isDefined(growth.valuePerPointGrowth)) continue;
        const { recordedValue, velocityPoints } = sprints[i] as ValuedSprint;
        const byPoint = `(${recordedValue}/${velocityPoints})/(${base.recordedValue}/${base.velocityPoints})`;
        checks.push({ got: growth.valuePerPointGrowth, formula: byPoint });
      }
    }
    expect(checks.length).toBeGreaterThan(200);
    const expected = spreadsheet(checks.map(({ formula }) => formula));
    for (const [i, { got }] of checks.entries()) {
      expect(Math.abs(got - (expected[i] as number))).toBeLessThan(1e-9 * Math.max(1, Math.abs(got)));
    }
  });

  test('never gives NaN or Infinity', () => {
    fc.assert(
      fc.property(fc.array(anySprint, { maxLength: 12 }), fc.nat(3), (sprints, firstIndex) => {
        for (const growth of valueGrowth(sprints, firstIndex).sprints) {
          for (const value of Object.values(growth)) {
            if (isDefined(value)) expect(Number.isFinite(value)).toBe(true);
            else expect(value.undefined.code).toMatch(/^[a-z-]+$/);
          }
        }
      }),
      { seed: 20261117 },
    );
  });
});
