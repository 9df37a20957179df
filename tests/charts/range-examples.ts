/** Invented answers to "how much should we commit to?", made by the range itself. */
import type { RangeAdvice } from '../../src/app/advice/advice.ts';
import type { PastSprint } from '../../src/app/history/past-sprint.ts';
import { commitmentPast } from '../../src/app/history/team-history.ts';
import { type CommitmentRange, commitmentRange } from '../../src/forecast/commitment-range.ts';
import { dayPlus } from '../../src/sprint/calendar.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import { undefinedBecause } from '../../src/sprint/undefined-value.ts';
import { exampleTeam, ordinaryPast, pastSprint } from './past-examples.ts';

export function rangeAdvice(past: readonly PastSprint[], change: Partial<CommitmentRange> = {}): RangeAdvice {
  const startsOn = dayPlus(past.at(-1)?.endsOn ?? '2026-10-30', 3);
  const endsOn = dayPlus(startsOn, 11);
  const coming = { workingDays: 10, memberDays: undefined, memberDaysWhenAllThere: undefined };
  const range = commitmentRange(commitmentPast(past), { ...coming }, DEFAULT_THRESHOLDS);
  return {
    team: exampleTeam,
    on: dayPlus(startsOn, -1),
    sprints: past.length,
    importedSprints: past.filter(({ importedAt }) => importedAt !== undefined).length,
    question: { about: 'range' },
    coming: { startsOn, endsOn, workingDays: 10, members: 5, memberDays: 50, awayDays: undefined },
    range: 'undefined' in range ? range : { ...range, ...change },
    past,
    thresholds: DEFAULT_THRESHOLDS,
  };
}

export const ordinaryRange = rangeAdvice(ordinaryPast);
export const oneSprintRange = rangeAdvice(ordinaryPast.slice(0, 1));
export const noSprintRange = rangeAdvice([]);
export const threeSprintRange = rangeAdvice(ordinaryPast.slice(0, 3));
export const onlyHigh = rangeAdvice(ordinaryPast, {
  lowPoints: undefinedBecause('few-sprints', { needed: 3, known: 0, having: 'pulled-in-points' }),
  highPoints: 24,
});
export const onlyLow = rangeAdvice(ordinaryPast, {
  lowPoints: 21.5,
  highPoints: undefinedBecause('few-sprints', { needed: 3, known: 0, having: 'finished-points' }),
});
export const equalEnds = rangeAdvice(ordinaryPast, { lowPoints: 24, highPoints: 24 });
export const middleWay = rangeAdvice(ordinaryPast, {
  lowPoints: 27,
  highPoints: 21,
  crossed: {
    why: { code: 'varies-too-much' },
    compromise: { points: 24, chance: 0.6 },
  },
});
export const crossedRange = rangeAdvice(ordinaryPast, {
  lowPoints: 27.5,
  highPoints: 20,
  crossed: {
    why: { code: 'pulled-in-before-finishing', sprints: 5, of: 9 },
    compromise: undefined,
  },
});
export const nothingKept = rangeAdvice(ordinaryPast, {
  lowPoints: 10,
  highPoints: 0,
  crossed: {
    why: { code: 'too-little-finished' },
    compromise: undefined,
  },
});

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
