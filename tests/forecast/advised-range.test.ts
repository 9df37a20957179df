import { describe, expect, test } from 'vitest';
import { advisedRange } from '../../src/forecast/advised-range.ts';
import type { CommitmentRange } from '../../src/forecast/commitment-range.ts';
import { commitmentRange } from '../../src/forecast/commitment-range.ts';
import { reason, undefinedBecause } from '../../src/sprint/undefined-value.ts';

const THRESHOLDS = { keptShareAtLeast: 0.8, pullInRatioAtMost: 0.2, surpriseRatioAtMost: 0.2 };
const TEN_DAYS = { workingDays: 10, memberDays: undefined, memberDaysWhenAllThere: undefined };
const SPRINT = {
  commitmentPoints: 20,
  pulledInPoints: 2,
  surprisePoints: 0,
  velocityPoints: 20,
  committedFinishedPoints: 18,
  workingDays: 10,
  memberDays: undefined,
};

function range(change: Partial<CommitmentRange>): CommitmentRange {
  const made = commitmentRange([SPRINT, SPRINT, SPRINT], TEN_DAYS, THRESHOLDS);
  if ('undefined' in made) throw new Error(made.undefined.code);
  return { ...made, ...change };
}

const NO = undefinedBecause('few-sprints', { needed: 3, known: 1, having: 'pulled-in-points' });
const OTHER = undefinedBecause('floor-is-zero');
const WHY = reason('varies-too-much');
const crossed = (points?: number) => ({
  why: WHY,
  compromise: points === undefined ? undefined : { points, chance: 0.6 },
});

describe('what a commitment range advises', () => {
  test('is both ends when they do not cross', () => {
    expect(advisedRange(range({ lowPoints: 18, highPoints: 21, crossed: undefined }))).toEqual({
      kind: 'range',
      lowPoints: 18,
      highPoints: 21,
    });
  });

  test('is the one end that is known, with the reason why the other is not', () => {
    expect(advisedRange(range({ lowPoints: NO, highPoints: 21 }))).toEqual({
      kind: 'at most',
      highPoints: 21,
      why: NO.undefined,
    });
    expect(advisedRange(range({ lowPoints: 18, highPoints: NO }))).toEqual({
      kind: 'at least',
      lowPoints: 18,
      why: NO.undefined,
    });
  });

  test('is the compromise between crossed ends, or the high end where there is none', () => {
    const ends = { lowPoints: 25, highPoints: 20 };
    expect(advisedRange(range({ ...ends, crossed: crossed(22) }))).toEqual({
      kind: 'middle way',
      ...ends,
      points: 22,
      chance: 0.6,
      why: WHY,
    });
    expect(advisedRange(range({ ...ends, crossed: crossed() }))).toEqual({
      kind: 'crossed',
      ...ends,
      why: WHY,
    });
  });

  test('is nothing, with the reason, when too little is known or nothing is likely to be kept', () => {
    expect(advisedRange(NO)).toEqual({ kind: 'none', why: NO.undefined });
    expect(advisedRange(range({ lowPoints: NO, highPoints: OTHER }))).toEqual({
      kind: 'none',
      why: OTHER.undefined,
    });
    expect(advisedRange(range({ lowPoints: 8, highPoints: 0, crossed: crossed() }))).toEqual({
      kind: 'none',
      why: WHY,
    });
  });
});
