import { describe, expect, test } from 'vitest';
import { gradedReleases } from '../../src/forecast/graded-releases.ts';
import { type ReleaseByDay, releaseByDay } from '../../src/forecast/release-by-day.ts';
import { type ReleaseQuestion, releaseForecast } from '../../src/forecast/release-forecast.ts';
import { dayPlus } from '../../src/sprint/calendar.ts';
import type { UndefinedValue } from '../../src/sprint/undefined-value.ts';
import { spreadsheet } from './spreadsheet.ts';

const sprintsOf = (points: readonly number[]) =>
  points.map((velocityPoints) => ({ velocityPoints, time: 1 }));
const QUESTION: ReleaseQuestion = {
  backlogPoints: 60,
  scopeGrowthPoints: 0,
  sprints: sprintsOf([9, 12, 10, 8, 11, 7, 13, 9, 10, 12, 6, 14]),
  startsOn: '2026-11-02',
  sprintLengthDays: 14,
  comingTimes: [1],
};
const GRADED = { ...QUESTION, graded: { team: 'A', releases: gradedReleases('A', QUESTION.sprints) } };

function known<T extends object>(answer: T): Exclude<T, UndefinedValue> {
  if ('undefined' in answer) throw new Error(JSON.stringify(answer.undefined));
  return answer as Exclude<T, UndefinedValue>;
}
const by = (question: Parameters<typeof releaseByDay>[0], on: string): ReleaseByDay =>
  known(releaseByDay(question, on));

describe('the chance by a day', () => {
  test.each([
    ['as told', QUESTION],
    ['graded', GRADED],
  ])('%s, is that of a date on its day, and less on the day before', (_, question) => {
    const { dates } = known(releaseForecast(question));
    for (const date of dates) {
      const { on, chance } = known(date);
      expect(by(question, on).chance).toBeGreaterThanOrEqual(chance);
      expect(by(question, dayPlus(on, -1)).chance).toBeLessThan(chance);
    }
  });

  test('at the end of a sprint is the chance of the forecast there', () => {
    const { chanceBySprint } = known(releaseForecast(GRADED));
    for (const [sprint, chance] of chanceBySprint.entries()) {
      expect(by(GRADED, dayPlus('2026-11-02', 14 * sprint - 1)).chance).toBeCloseTo(chance, 12);
    }
  });

  test('is none before the first sprint, and far off it is that of the last sprint', () => {
    expect(by(QUESTION, '2026-10-30')).toMatchObject({ sprints: 0, chance: 0 });
    expect(by(QUESTION, '2099-01-01').sprints).toBe(130);
  });
});

describe('how much by a day', () => {
  test.each([
    ['as told', QUESTION],
    ['graded and growing', { ...GRADED, scopeGrowthPoints: 2 }],
  ])('%s, needs no amount of work, which changes nothing of it', (_, question) => {
    const { chance, ...rest } = by({ ...question, backlogPoints: undefined }, '2027-01-10');
    expect(chance).toBeUndefined();
    const { chance: known, ...asked } = by(question, '2027-01-10');
    expect(known).toBeGreaterThan(0);
    expect(rest).toEqual(asked);
  });

  test('is the most that keeps the chance', () => {
    for (const on of ['2026-11-20', '2027-01-10', '2027-05-02']) {
      for (const { chance, points } of by(QUESTION, on).amounts) {
        const chanceOf = (backlogPoints: number) => by({ ...QUESTION, backlogPoints }, on).chance;
        expect(chanceOf(points)).toBeGreaterThanOrEqual(chance);
        expect(chanceOf(points + 1)).toBeLessThan(chance);
      }
    }
  });

  test('of a steady pace is the quantile of a lognormal distribution in a spreadsheet', () => {
    // Ten sprints of 8, of which only the wandering of the pace is unsure: 0.5 in the logarithm after three sprints.
    const [expected] = spreadsheet(['FLOOR(80*EXP(-0.5*NORM.S.INV(0.85)),1)']) as [number];
    const steady = { ...QUESTION, sprints: sprintsOf([8, 8, 8]) };
    expect(by(steady, dayPlus('2026-11-02', 139)).amounts).toEqual([
      { chance: 0.85, points: expected },
      { chance: 0.5, points: 80 },
    ]);
  });

  test('is nothing before the first sprint', () => {
    expect(by(QUESTION, '2026-10-30').amounts.map(({ points }) => points)).toEqual([0, 0]);
  });
});

test('without a forecast there is the same reason', () => {
  for (const change of [{ sprints: [] }, { sprints: sprintsOf([0, 0, 0]) }, { backlogPoints: 0 }]) {
    expect(releaseByDay({ ...QUESTION, ...change }, '2027-01-10')).toEqual(
      releaseForecast({ ...QUESTION, ...change }),
    );
  }
});
