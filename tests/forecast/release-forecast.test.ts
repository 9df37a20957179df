import { describe, expect, test } from 'vitest';
import { gradedReleases } from '../../src/forecast/graded-releases.ts';
import type { ReleaseDate, ReleaseForecast, ReleaseQuestion } from '../../src/forecast/release-forecast.ts';
import { releaseForecast } from '../../src/forecast/release-forecast.ts';
import { chanceFinished, type PacedSprint, type TeamPace, teamPace } from '../../src/forecast/team-pace.ts';
import type { Reason } from '../../src/sprint/undefined-value.ts';
import { type SeededRandom, seededRandom } from './seeded-random.ts';
import { spreadsheet } from './spreadsheet.ts';

const sprintsOf = (points: readonly number[], time = 1): PacedSprint[] =>
  points.map((velocityPoints) => ({ velocityPoints, time }));

const QUESTION: ReleaseQuestion = {
  backlogPoints: 60,
  scopeGrowthPoints: 0,
  sprints: sprintsOf([9, 12, 10, 8, 11]),
  startsOn: '2026-11-02',
  sprintLengthDays: 14,
  comingTimes: [1],
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
    const [, , pessimistic] = datesOf({ backlogPoints: 40, sprints: sprintsOf([8, 8, 8]) }) as ReleaseDate[];
    const [at8, at9] = spreadsheet([8, 9].map((k) => `NORM.S.DIST(LN(8*${k}/40)/0.5,TRUE())`)) as [
      number,
      number,
    ];
    expect(at8).toBeLessThan(0.85);
    expect(at9).toBeGreaterThan(0.85);
    expect(pessimistic?.sprints).toBeCloseTo(8 + (0.85 - at8) / (at9 - at8), 9);
  });

  test('are days: the last day of the first sprint is one sprint on, and half a sprint half its days', () => {
    const [optimistic] = datesOf({ backlogPoints: 0.5, sprints: sprintsOf([10, 10, 10]) }) as [ReleaseDate];
    expect(optimistic.sprints).toBeCloseTo(0.15, 2);
    // 0.15 of 14 days is on the third day.
    expect(optimistic.on).toBe('2026-11-04');
    for (const { sprints, on } of datesOf({ sprintLengthDays: 1 })) {
      const day = new Date(Date.UTC(2026, 10, 1 + Math.ceil(sprints))).toISOString().slice(0, 10);
      expect(on).toBe(day);
    }
  });

  test('follow the chances by the pace on the time of the coming sprints', () => {
    const sprints = sprintsOf([2, 10, 18, 12, 9, 14], 8);
    const pace = teamPace(sprints) as TeamPace;
    const comingTimes = [8, 4, 8, 0, 12];
    const { chanceBySprint } = asked({ sprints, comingTimes, backlogPoints: 40, scopeGrowthPoints: 1 });
    const times = [8, 12, 20, 20, 32, 38.4];
    let reached = 0;
    for (const [i, time] of times.entries()) {
      reached = Math.max(reached, chanceFinished(pace, 40 + (i + 1), time));
      // After the sprints that are known, each counts as their mean: 32 ÷ 5.
      expect(chanceBySprint[i + 1]).toBeCloseTo(reached, 12);
    }
  });

  test('of growth that is unsure are the mean over it, as a fine sum over a normal distribution gives it', () => {
    const change = { sprints: sprintsOf([9, 12, 10, 8, 11, 10, 9]), backlogPoints: 80, scopeGrowthPoints: 3 };
    const pace = teamPace(change.sprints) as TeamPace;
    const places = Array.from({ length: 1201 }, (_, i) => -6 + i / 100);
    const weights = places.map((place) => Math.exp(-0.5 * place ** 2));
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    const { chanceBySprint } = asked({ ...change, scopeGrowthDeviation: 1.5 });
    for (const [sprint, chance] of chanceBySprint.entries()) {
      if (sprint === 0) continue;
      const exact = places.reduce((sum, place, i) => {
        const needed = 80 + sprint * Math.max(0, 3 + 1.5 * place);
        return sum + ((weights[i] as number) / total) * chanceFinished(pace, needed, sprint);
      }, 0);
      expect(Math.abs(chance - exact)).toBeLessThan(0.01);
    }
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
    [
      'two sprints',
      { sprints: sprintsOf([8, 9]) },
      { code: 'few-sprints', needed: 3, known: 2, having: 'closed' },
    ],
    ['no sprint', { sprints: [] }, { code: 'few-sprints', needed: 3, known: 0, having: 'closed' }],
    ['nothing finished', { sprints: sprintsOf([0, 0, 0, 0, 0]) }, { code: 'no-velocity', sprints: 5 }],
    ['nothing left', { backlogPoints: 0 }, { code: 'no-backlog' }],
  ])('%s', (_, change, why) => {
    expect(reasonFor(change)).toEqual(why);
  });

  test('a date that scope growth puts off for ever', () => {
    const { dates } = asked({ scopeGrowthPoints: 30 });
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

describe('a team that changes, or never does', () => {
  test('sprints of one week and of two weeks have the same pace: 100 points after 2 a day', () => {
    // Ten points in each of three one-week sprints, twenty in each of two two-week sprints, by a team of one pace.
    const sprints = [...sprintsOf([10, 10, 10], 5), ...sprintsOf([20, 20], 10)];
    const [, inTwo] = datesOf({ backlogPoints: 100, sprints, comingTimes: [10] });
    expect(inTwo?.sprints).toBeCloseTo(5, 6);
    expect(inTwo?.on).toBe('2027-01-10');
    const [, inOne] = datesOf({ backlogPoints: 100, sprints, comingTimes: [5], sprintLengthDays: 7 });
    expect(inOne?.on).toBe('2027-01-10');
  });

  test('twice the members need half the time', () => {
    const [, alone] = datesOf({ sprints: sprintsOf([10, 10, 10], 40), comingTimes: [40] });
    const [, twice] = datesOf({ sprints: sprintsOf([10, 10, 10], 40), comingTimes: [80] });
    expect((alone?.sprints as number) / (twice?.sprints as number)).toBeCloseTo(2, 6);
  });

  test('fifty sprints of exactly 30 make 300 points in ten sprints, give or take a tenth of one', () => {
    const sprints = sprintsOf(Array.from({ length: 50 }, () => 30));
    const graded = { team: 'A', releases: gradedReleases('A', sprints) };
    for (const { sprints: needed } of datesOf({ backlogPoints: 300, sprints, graded })) {
      expect(Math.abs(needed - 10)).toBeLessThan(0.1);
    }
    const worth7 = datesOf({ backlogPoints: 210, sprints, graded }).map((date) => date.sprints);
    for (const needed of worth7) expect(Math.abs(needed - 7)).toBeLessThan(0.1);
  });
});

/**
 * Invented teams; by their rules the dates should hold as often as they say. Each is forecast after 30 sprints, from
 * its own past alone, and then goes on by the same rule.
 */
describe('dates hold on simulated teams', () => {
  type Rule = (random: SeededRandom) => (sprint: number) => number;
  const rules: Record<string, Rule> = {
    steady: (random) => () => Math.max(0, Math.round(30 * (1 + 0.25 * random.normal()))),
    trending: (random) => {
      const growth = 0.02 * random.normal();
      return (sprint) => Math.round(30 * Math.exp(growth * sprint + 0.25 * random.normal()));
    },
    jumping: (random) => {
      let level = 30;
      return () => {
        if (random.uniform() < 0.06) level = 30 * Math.exp(0.5 * random.normal());
        return Math.round(level * Math.exp(0.2 * random.normal()));
      };
    },
    'often empty': (random) => () =>
      random.uniform() < 0.35 ? 0 : Math.round(30 * Math.exp(0.3 * random.normal())),
  };

  test.each(Object.entries(rules))('%s', (name, rule) => {
    const held = [0, 0, 0];
    const teams = 400;
    for (let team = 0; team < teams; team += 1) {
      const next = rule(seededRandom(team * 7 + name.length));
      const sprints = sprintsOf(Array.from({ length: 30 }, (_, i) => next(i)));
      const graded = { team: 'A', releases: gradedReleases('A', sprints) };
      const worth = sprints.slice(-5).reduce((sum, { velocityPoints }) => sum + velocityPoints, 0) / 5;
      if (worth === 0) continue;
      const backlogPoints = Math.ceil(6 * worth);
      const dates = datesOf({ backlogPoints, sprints, graded });
      const coming = Array.from({ length: 130 }, (_, i) => next(30 + i));
      for (const [place, date] of dates.entries()) {
        const whole = Math.floor(date.sprints);
        const done = coming.slice(0, whole).reduce((sum, points) => sum + points, 0);
        if (done + (date.sprints - whole) * (coming[whole] ?? 0) >= backlogPoints)
          held[place] = (held[place] as number) + 1;
      }
    }
    const shares = held.map((count) => (100 * count) / teams);
    for (const [place, promise] of [15, 50, 85].entries()) {
      expect(Math.abs((shares[place] as number) - promise)).toBeLessThanOrEqual(5);
    }
  });
});
