import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { commitmentModel } from '../../src/forecast/commitment-model.ts';
import { loadReading } from '../../src/forecast/load-signal.ts';
import { plannedAndProjected, planShare } from '../../src/forecast/planned-and-projected.ts';
import { NO_HISTORY, projectVelocity, withEndedSprints } from '../../src/forecast/project-velocity.ts';
import { setChances } from '../../src/forecast/set-chances.ts';
import { weightedPoints } from '../../src/forecast/weighted-points.ts';
import { aPastSprint } from './past-sprint.ts';
import { soFar } from './sprints-so-far.ts';

const START = { finishedPoints: 0, elapsedShare: 0 };
const PROJECTED = weightedPoints([10, 16, 20], [1, 2, 1]);
/** Spread evenly from 0 to 20 points. */
const PLANNED = { cdf: (points: number) => Math.min(1, Math.max(0, points / 20)) };

const anyDistribution = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 80 }), fc.integer({ min: 1, max: 9 })), {
    minLength: 1,
    maxLength: 12,
  })
  .map((pairs) =>
    weightedPoints(
      pairs.map(([halves]) => halves / 2),
      pairs.map(([, weight]) => weight),
    ),
  );

test('the planning’s share falls evenly from a half to nothing at two fifths of the time', () => {
  expect([0, 0.1, 0.2, 0.4, 0.7, 1].map(planShare)).toEqual([
    0.5,
    expect.closeTo(0.375, 12),
    expect.closeTo(0.25, 12),
    0,
    0,
    0,
  ]);
});

test('without a planning, and from two fifths of the time on, the projection speaks alone', () => {
  expect(plannedAndProjected(PROJECTED, undefined, START)).toBe(PROJECTED);
  expect(plannedAndProjected(PROJECTED, PLANNED, { ...START, elapsedShare: 0.4 })).toBe(PROJECTED);
});

test('what is finished already counts for the planning as well', () => {
  const { cdf } = plannedAndProjected(weightedPoints([10], [1]), PLANNED, {
    finishedPoints: 10,
    elapsedShare: 0,
  });
  expect(cdf(9.5)).toBe(0);
  // Of what lies from 9.75 on, as points come in halves.
  expect(cdf(15)).toBeCloseTo((0.5 * (15.25 - 9.75)) / (20 - 9.75) + 0.5, 12);
});

test('where more is finished than the planning thought possible, the projection speaks alone', () => {
  expect(plannedAndProjected(PROJECTED, PLANNED, { finishedPoints: 30, elapsedShare: 0 })).toBe(PROJECTED);
});

describe('whatever both say', () => {
  const anyCase = fc.record({
    projected: anyDistribution,
    planned: anyDistribution,
    elapsedShare: fc.double({ min: 0, max: 1, noNaN: true }),
    finishedPoints: fc.integer({ min: 0, max: 30 }).map((halves) => halves / 2),
  });

  test('the chance rises from 0 to 1', () => {
    fc.assert(
      fc.property(anyCase, ({ projected, planned, ...now }) => {
        const { cdf } = plannedAndProjected(projected, planned, now);
        const chances = Array.from({ length: 90 }, (_, i) => cdf(i / 2 - 0.5));
        expect(chances).toEqual(chances.toSorted((a, b) => a - b));
        expect(chances[0]).toBe(0);
        expect(chances.at(-1)).toBeCloseTo(1, 12);
      }),
    );
  });

  test('on the first day the chances of whole cards are the mean of both, weighed by the planning’s share', () => {
    const anySizes = fc.array(fc.constantFrom(1, 2, 3, 5, 8), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(anyCase, anySizes, ({ projected, planned }, sizes) => {
        const total = sizes.reduce((sum, size) => sum + size, 0);
        const loaded = {
          sizes,
          finishedPoints: 0,
          open: sizes.map((estimatePoints) => ({ estimatePoints, isCommitted: true, isBegun: false })),
          missingPoints: Math.ceil(1.6 * total - 1e-9) / 2,
        };
        const plan = setChances(() => planned, sizes, 0.8);
        const alone = loadReading(projected, loaded);
        const { keepingChance, allFinishedChance } = loadReading(
          plannedAndProjected(projected, planned, START),
          loaded,
        );
        expect(keepingChance).toBeCloseTo(0.5 * (plan?.kept ?? 0) + 0.5 * alone.keepingChance, 9);
        expect(allFinishedChance).toBeCloseTo(0.5 * (plan?.all ?? 0) + 0.5 * alone.allFinishedChance, 9);
        expect(allFinishedChance).toBeLessThanOrEqual(keepingChance + 1e-9);
      }),
    );
  });
});

test('a team that always finishes 20 of 25 points is not told on the first morning that it keeps twice as much', () => {
  const past = Array.from({ length: 10 }, () =>
    aPastSprint({
      commitmentPoints: 25,
      pulledInPoints: 0,
      committedFinishedPoints: 20,
      velocityPoints: 20,
    }),
  );
  const model = commitmentModel(past, { workingDays: 10, memberDays: 50, memberDaysWhenAllThere: 50 });
  if ('undefined' in model || 'undefined' in model.finishes) throw new Error('There is a model.');
  const { amountOf } = model.finishes;
  const history = past.reduce(
    (known) => withEndedSprints(known, [{ team: 'ours', soFar: soFar(25, 0), velocityPoints: 20 }]),
    NO_HISTORY,
  );
  const kept = (commitment: number): number => {
    const sizes = Array.from({ length: commitment / 5 }, () => 5);
    const { distribution } = projectVelocity(history, 'ours', soFar(commitment, 0));
    return loadReading(plannedAndProjected(distribution, amountOf(commitment), START), {
      sizes,
      finishedPoints: 0,
      open: sizes.map((estimatePoints) => ({ estimatePoints, isCommitted: true, isBegun: false })),
      missingPoints: 0.8 * commitment,
    }).keepingChance;
  };
  expect(kept(25)).toBeGreaterThan(0.9);
  expect(kept(40)).toBeLessThan(0.25);
});
