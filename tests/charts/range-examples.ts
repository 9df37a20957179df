/** Invented answers to "how much should we commit to?", made by the range itself. */
import type { RangeAdvice } from '../../src/app/advice/advice.ts';
import { comingTime } from '../../src/app/advice/range-advice.ts';
import type { PastSprint } from '../../src/app/history/past-sprint.ts';
import { commitmentPast } from '../../src/app/history/team-history.ts';
import { commitmentRange } from '../../src/forecast/commitment-range.ts';
import { dayPlus } from '../../src/sprint/calendar.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import { exampleTeam, ordinaryPast, pastSprint } from './past-examples.ts';

export function rangeAdvice(past: readonly PastSprint[]): RangeAdvice {
  const startsOn = dayPlus(past.at(-1)?.endsOn ?? '2026-10-30', 3);
  const endsOn = dayPlus(startsOn, 11);
  const coming = { startsOn, endsOn, workingDays: 10, members: 5, memberDays: 50, awayDays: undefined };
  const range = commitmentRange(commitmentPast(past), comingTime(coming), DEFAULT_THRESHOLDS);
  return {
    team: exampleTeam,
    on: dayPlus(startsOn, -1),
    sprints: past.length,
    importedSprints: past.filter(({ importedAt }) => importedAt !== undefined).length,
    question: { about: 'range' },
    ...{ coming, range, past },
    thresholds: DEFAULT_THRESHOLDS,
  };
}

/** So much finished of so many points, nothing pulled in. */
const finished = (commitment: number, points: readonly number[]) =>
  points.map((velocity, index) =>
    pastSprint(index, { commitment, pulledIn: 0, surprise: 0, velocity, committedFinished: velocity }),
  );

export const ordinaryRange = rangeAdvice(ordinaryPast);
export const oneSprintRange = rangeAdvice(ordinaryPast.slice(0, 1));
export const noSprintRange = rangeAdvice([]);
export const threeSprintRange = rangeAdvice(ordinaryPast.slice(0, 3));
/** What was pulled in, nobody recorded. */
export const withoutPulledIn = rangeAdvice(
  ordinaryPast.map((sprint) => ({ ...sprint, pulledInPoints: undefined })),
);
/** What was finished, nobody recorded. */
export const withoutFinished = rangeAdvice(
  ordinaryPast.map((sprint) => ({
    ...sprint,
    velocityPoints: undefined,
    committedFinishedPoints: undefined,
  })),
);
/** Hardly any spread, so that all lines fall at about one place. */
export const steadyRange = rangeAdvice(finished(40, [30, 31, 30, 29, 30, 30, 31, 30]));
/** No commitment serves both. */
export const waveringRange = rangeAdvice(finished(34, [4, 30, 8, 26, 3, 33, 6, 28]));
export const pullsInEarly = rangeAdvice(
  Array.from({ length: 6 }, (_, index) =>
    pastSprint(index, { commitment: 30, pulledIn: 15, surprise: 0, velocity: 30, committedFinished: 18 }),
  ),
);
export const nothingKept = rangeAdvice(finished(30, [0, 0, 0, 0]));
export const tinyRange = rangeAdvice(finished(2, [1, 2, 1, 2, 2, 1]));

/** Long names, amounts not recorded, sprints without a commitment. */
export const patchyRange = rangeAdvice([
  pastSprint(0, {
    commitment: 30,
    imported: true,
    velocity: 26,
    name: 'A name that is much too long to write',
  }),
  pastSprint(1, { commitment: 28, imported: true }),
  pastSprint(2, { commitment: 0, pulledIn: 12, surprise: 0, velocity: 12, committedFinished: 0 }),
  pastSprint(3, { commitment: 30, pulledIn: 2.5, surprise: 0, velocity: 30.5, committedFinished: 28 }),
  pastSprint(4, { commitment: 31, pulledIn: 0.5, surprise: 9.5, velocity: 29, committedFinished: 28.5 }),
]);

export const hugeRange = rangeAdvice(
  Array.from(
    { length: 260 },
    (_, index) =>
      pastSprint(index, {
        commitment: 90_000 + (index % 7) * 1_111.5,
        pulledIn: (index % 5) * 2_000.5,
        surprise: 0,
        velocity: 92_000 + (index % 3) * 3_000.5,
        committedFinished: 88_000 + (index % 7) * 1_000,
      }),
    '2016-01-04',
  ),
);
