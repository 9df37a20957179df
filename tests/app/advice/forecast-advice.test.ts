import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import {
  type ForecastGround,
  forecastGround,
  forecastOf,
  lentBy,
} from '../../../src/app/advice/forecast-advice.ts';
import type { PastSprint } from '../../../src/app/history/past-sprint.ts';
import type { Reading } from '../../../src/app/ports/store.ts';
import type { Member } from '../../../src/app/team/team.ts';
import { daysBetween } from '../../../src/sprint/calendar.ts';
import { aMember, aTeam } from '../../store/store-examples.ts';
import { pastSprintsOf } from '../past-sprints.ts';

const TEAM = aTeam();
const members = (count: number): Member[] =>
  Array.from({ length: count }, (_, i) => aMember({ userId: `member-${i}` }));
const GROUND: ForecastGround = {
  team: TEAM,
  members: members(4),
  startsOn: '2026-07-06',
  sprintLengthDays: 14,
  lent: [],
};
/** Of four members, 20 points in ten working days. */
const FOUR = { velocityPoints: 20, memberDays: 40 };

function likelySprints(past: readonly PastSprint[], change: Partial<ForecastGround> = {}): number {
  const ground = { ...GROUND, ...change };
  const { forecast } = forecastOf({ about: 'forecast', backlogPoints: 100, growthPoints: 0 }, past, ground);
  if ('undefined' in forecast) throw new Error(forecast.undefined.code);
  const [, likely] = forecast.dates;
  if (likely === undefined || 'undefined' in likely) throw new Error('no likely date');
  return likely.sprints;
}

test('100 points of a team of four that finishes 20 a sprint take five sprints, of eight half as many, of two twice', () => {
  const past = pastSprintsOf([FOUR, FOUR, FOUR]);
  expect(likelySprints(past)).toBeCloseTo(5, 6);
  expect(likelySprints(past, { members: members(8) })).toBeCloseTo(2.5, 1);
  expect(likelySprints(past, { members: members(2) })).toBeCloseTo(10, 6);
});

test('short sprints and long ones have one pace', () => {
  const oneWeek = { velocityPoints: 10, workingDays: 5, memberDays: 20 };
  const mixed = pastSprintsOf([oneWeek, oneWeek, oneWeek, FOUR, FOUR]);
  // The two forecasts that could have been made before move it by a hair.
  expect(Math.abs(likelySprints(mixed) - 5)).toBeLessThan(0.1);
  expect(Math.abs(likelySprints(mixed, { sprintLengthDays: 7 }) - 10)).toBeLessThan(0.2);
});

test('where an import did not say who was there, working days count with the members of now', () => {
  const imported = { velocityPoints: 20, memberDays: undefined };
  expect(likelySprints(pastSprintsOf([imported, imported, imported]))).toBeCloseTo(5, 6);
});

test('days off that are known put the dates off, the team’s and the members’', () => {
  const past = pastSprintsOf([FOUR, FOUR, FOUR]);
  // The second sprint falls away for everybody.
  const week = (from: number) => Array.from({ length: 5 }, (_, i) => `2026-07-${from + i}`);
  const daysOff = { full: [...week(20), ...week(27)], half: [] };
  expect(likelySprints(past, { team: { ...TEAM, daysOff } })).toBeCloseTo(6, 6);
  const halfThere = members(4).map((member, i) => (i < 2 ? { ...member, daysOff } : member));
  expect(likelySprints(past, { members: halfThere })).toBeCloseTo(5.5, 1);
});

test('how the forecasts of other teams of the workspace came out moves the dates, and nothing else of them does', () => {
  const past = pastSprintsOf([FOUR, FOUR, FOUR]);
  const slowing = Array.from({ length: 30 }, (_, i) => ({
    teamId: 'other',
    velocityPoints: Math.round(1000 * 0.93 ** i),
    workingDays: 10,
    memberDays: 400,
  }));
  // Their forecasts came out too early, so this one is later; that they finish fifty times as much is nothing to it.
  expect(likelySprints(past, { lent: lentBy(slowing) })).toBeGreaterThan(5.3);
  expect(likelySprints(past, { lent: lentBy(slowing) })).toBeLessThan(9);
});

test('what other teams lend is read once, until the past of the workspace is another', async () => {
  let [version, reads] = [randomUUID() as string | undefined, 0];
  const read: Partial<Reading> = {
    latestSpans: async () => [],
    pastVersion: async () => version,
    pastTimesOfOthers: async () => {
      reads += 1;
      return [];
    },
  };
  const ground = () => forecastGround(read as Reading, TEAM, members(4), GROUND.startsOn);
  await ground();
  await ground();
  expect(reads).toBe(1);
  version = randomUUID();
  await ground();
  expect(reads).toBe(2);
  version = undefined;
  await ground();
  await ground();
  expect(reads).toBe(4);
});

test('dates are days of the calendar, from the first day of the first sprint', () => {
  const { forecast } = forecastOf(
    { about: 'forecast', backlogPoints: 100, growthPoints: 0 },
    pastSprintsOf([FOUR, FOUR, FOUR]),
    GROUND,
  );
  if ('undefined' in forecast) throw new Error(forecast.undefined.code);
  const [, likely] = forecast.dates;
  expect(likely && 'on' in likely && daysBetween(GROUND.startsOn, likely.on)).toBe(69);
});

test('growth that nobody named is measured by the work that came in after planning', () => {
  const past = pastSprintsOf(
    [FOUR, FOUR, FOUR].map((four) => ({ ...four, commitmentPoints: 18, pulledInPoints: 2 })),
  );
  const { growth } = forecastOf({ about: 'forecast', backlogPoints: 100 }, past, GROUND);
  // A tenth of 20 points a sprint, less where days are off; all sprints alike, so nothing is unsure of it.
  expect(growth.points).toBeCloseTo(2, 1);
  expect(growth).toMatchObject({ span: undefined, measuredSprints: 3 });
  const unknown = pastSprintsOf([FOUR, FOUR, FOUR].map((four) => ({ ...four, pulledInPoints: undefined })));
  expect(forecastOf({ about: 'forecast', backlogPoints: 100 }, unknown, GROUND).growth).toEqual({
    points: 0,
    span: undefined,
    measuredSprints: 0,
  });
});

test('growth between two ends means that in 8 of 10 cases it lies between them', () => {
  const past = pastSprintsOf([FOUR, FOUR, FOUR]);
  const question = { about: 'forecast', backlogPoints: 100, growthPoints: 2, growthMostPoints: 6 } as const;
  const { growth, forecast } = forecastOf(question, past, GROUND);
  expect(growth).toEqual({ points: 4, span: { low: 2, high: 6 }, measuredSprints: undefined });
  const sure = forecastOf({ about: 'forecast', backlogPoints: 100, growthPoints: 4 }, past, GROUND).forecast;
  const sprintsAt = (of: typeof forecast, place: number) => {
    const date = 'undefined' in of ? undefined : of.dates[place];
    return date && 'sprints' in date ? date.sprints : Number.NaN;
  };
  expect(sprintsAt(forecast, 2)).toBeGreaterThan(sprintsAt(sure, 2));
  expect(sprintsAt(forecast, 0)).toBeLessThan(sprintsAt(sure, 0) + 0.05);
});

test('beside other work it takes longer: half of the sprints need twice of them', () => {
  const past = pastSprintsOf([FOUR, FOUR, FOUR]);
  const likelyAt = (sharePercent: number | undefined) => {
    const question = { about: 'forecast', backlogPoints: 50, growthPoints: 0, sharePercent } as const;
    const { forecast } = forecastOf(question, past, GROUND);
    const date = 'undefined' in forecast ? undefined : forecast.dates[1];
    return date && 'sprints' in date ? date.sprints : Number.NaN;
  };
  expect(likelyAt(undefined)).toBeCloseTo(2.5, 1);
  expect(likelyAt(50)).toBeCloseTo(5, 1);
});
