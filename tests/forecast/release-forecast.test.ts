import { describe, expect, test } from 'vitest';
import type { ReleaseDate, ReleaseForecast, ReleaseQuestion } from '../../src/forecast/release-forecast.ts';
import { releaseForecast } from '../../src/forecast/release-forecast.ts';
import { chancesToFinish } from '../../src/forecast/sprints-to-finish.ts';
import { weightedPoints } from '../../src/forecast/weighted-points.ts';
import type { Reason } from '../../src/sprint/undefined-value.ts';
import { spreadsheet } from './spreadsheet.ts';

const QUESTION: ReleaseQuestion = {
  backlogPoints: 60,
  scopeGrowthPoints: 0,
  velocities: [9, 12, 10, 8, 11],
  startsOn: '2026-11-02',
  sprintLengthDays: 14,
};

function asked(change: Partial<ReleaseQuestion>): ReleaseForecast {
  const forecast = releaseForecast({ ...QUESTION, ...change });
  if ('undefined' in forecast) throw new Error(forecast.undefined.code);
  return forecast;
}

function datesOf(change: Partial<ReleaseQuestion>): ReleaseDate[] {
  return asked(change).dates.map((date) => {
    if ('undefined' in date) throw new Error(date.undefined.code);
    return date;
  });
}

function reasonFor(change: Partial<ReleaseQuestion>): Reason | undefined {
  const forecast = releaseForecast({ ...QUESTION, ...change });
  return 'undefined' in forecast ? forecast.undefined : undefined;
}

describe('the dates at 15, 50 and 85%', () => {
  test('come in this order, the likely one near backlog over mean velocity', () => {
    const [optimistic, likely, pessimistic] = datesOf({}) as [ReleaseDate, ReleaseDate, ReleaseDate];
    expect([optimistic.chance, likely.chance, pessimistic.chance]).toEqual([0.15, 0.5, 0.85]);
    expect(optimistic.sprints).toBeLessThan(likely.sprints);
    expect(likely.sprints).toBeLessThan(pessimistic.sprints);
    expect(Math.abs(likely.sprints - 60 / 10)).toBeLessThan(0.75);
  });

  test('of a steady velocity lie on the straight lines between the chances of a spreadsheet', () => {
    // 40 points at 8 a sprint, of which only the wandering of the pace is unsure: Φ(ln(8k ÷ 40) ÷ 0.5).
    const [, , pessimistic] = datesOf({ backlogPoints: 40, velocities: [8, 8, 8] }) as ReleaseDate[];
    const [at8, at9] = spreadsheet([8, 9].map((k) => `NORM.S.DIST(LN(8*${k}/40)/0.5,TRUE())`)) as [
      number,
      number,
    ];
    expect(at8).toBeLessThan(0.85);
    expect(at9).toBeGreaterThan(0.85);
    expect(pessimistic?.sprints).toBeCloseTo(8 + (0.85 - at8) / (at9 - at8), 9);
  });

  test('are days: the last day of the first sprint is one sprint on, and half a sprint half its days', () => {
    const [optimistic] = datesOf({ backlogPoints: 0.5, velocities: [10, 10, 10] }) as [ReleaseDate];
    expect(optimistic.sprints).toBeCloseTo(0.15, 2);
    // 0.15 of 14 days is on the third day.
    expect(optimistic.on).toBe('2026-11-04');
    for (const { sprints, on } of datesOf({ sprintLengthDays: 1 })) {
      const day = new Date(Date.UTC(2026, 10, 1 + Math.ceil(sprints))).toISOString().slice(0, 10);
      expect(on).toBe(day);
    }
  });

  test('are as unsure as the pace wanders and as few sprints show it: σ² = 0.5² + s² ÷ (n·m²)', () => {
    // Mean 10, variance (n − 1) 64, of three sprints.
    const velocities = [2, 10, 18];
    const expected = chancesToFinish(
      {
        backlogPoints: 60,
        scopeGrowthPoints: 0,
        velocity: weightedPoints(velocities, [1, 1, 1]),
        paceDeviation: Math.sqrt(0.25 + 64 / (3 * 100)),
      },
      { enough: 0.85, most: 130 },
    );
    expect(asked({ velocities }).chanceBySprint).toEqual(expected);
  });

  test('are made from the latest five sprints', () => {
    expect(asked({ velocities: [90, 70, ...QUESTION.velocities] })).toEqual(asked({}));
    expect(asked({}).sprintsUsed).toBe(5);
    expect(asked({}).meanVelocityPoints).toBe(10);
  });

  test('move out when scope grows', () => {
    const settled = datesOf({});
    for (const [i, date] of datesOf({ scopeGrowthPoints: 2 }).entries()) {
      expect(date.sprints).toBeGreaterThan((settled[i] as ReleaseDate).sprints);
    }
  });
});

describe('without a forecast there is a reason', () => {
  test.each<[string, Partial<ReleaseQuestion>, Reason]>([
    ['two sprints', { velocities: [8, 9] }, { code: 'few-sprints', needed: 3, known: 2, having: 'closed' }],
    ['one sprint', { velocities: [8] }, { code: 'few-sprints', needed: 3, known: 1, having: 'closed' }],
    ['no sprint', { velocities: [] }, { code: 'few-sprints', needed: 3, known: 0, having: 'closed' }],
    ['nothing finished', { velocities: [9, 0, 0, 0, 0, 0] }, { code: 'no-velocity', sprints: 5 }],
    ['nothing left', { backlogPoints: 0 }, { code: 'no-backlog' }],
  ])('%s', (_, change, why) => {
    expect(reasonFor(change)).toEqual(why);
  });

  test('a date that scope growth puts off for ever', () => {
    const { dates } = asked({ scopeGrowthPoints: 10 });
    expect(dates.at(-1)).toEqual({ undefined: { code: 'too-far-off', sprints: 130, chance: 0.85 } });
  });
});

test.each([
  { backlogPoints: -1 },
  { scopeGrowthPoints: -1 },
  { sprintLengthDays: 0 },
  { backlogPoints: Number.NaN },
])('nonsense is refused: %o', (change) => {
  expect(() => releaseForecast({ ...QUESTION, ...change })).toThrow(RangeError);
});
