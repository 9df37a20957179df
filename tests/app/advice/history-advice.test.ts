import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RatioHistory } from '../../../src/app/advice/advice.ts';
import { goalsMet, historyOf } from '../../../src/app/advice/history-advice.ts';
import type { PastSprint } from '../../../src/app/history/past-sprint.ts';
import type { GoalMet } from '../../../src/app/team/team.ts';
import type { RatioId } from '../../../src/sprint/sprint-ratios.ts';
import { thresholdNotes } from '../../../src/sprint/threshold-notes.ts';
import { DEFAULT_THRESHOLDS } from '../../../src/sprint/thresholds.ts';
import { undefinedBecause } from '../../../src/sprint/undefined-value.ts';
import { pastRatios } from '../../support/past-ratios.ts';
import { aPastSprint, finishing, pastSprintsOf } from '../past-sprints.ts';

const WITH_MARKS = { ...DEFAULT_THRESHOLDS, velocityGrowthFirstMark: 2.4, velocityGrowthLongRangeMark: 5 };
const TEAM = { thresholds: DEFAULT_THRESHOLDS, baselineSprintId: undefined, baselineRule: 'first' } as const;
const UNKNOWN = { undefined: { code: 'velocity-unknown' } };

function ratioOf(
  name: RatioId,
  past: readonly PastSprint[],
  team: Parameters<typeof historyOf>[0] = TEAM,
): RatioHistory {
  const found = historyOf(team, past).ratios.find(({ ratio }) => ratio === name);
  if (!found) throw new Error(`${name} is missing`);
  return found;
}

describe('the history', () => {
  test('gives every ratio in a fixed order, with one value a sprint and the team’s own lines', () => {
    const team = { ...TEAM, thresholds: { ...WITH_MARKS, keptShareAtLeast: 0.7 } };
    const { ratios } = historyOf(team, pastSprintsOf([{}, {}]));
    expect(ratios.map(({ ratio, floor, ceiling, marks }) => [ratio, floor, ceiling, marks])).toEqual([
      ['keptShare', 0.7, undefined, []],
      ['surpriseRatio', undefined, 0.2, []],
      ['pullInRatio', undefined, 0.2, []],
      ['planShare', 0.8, undefined, []],
      // Its ceiling speaks only as a signal.
      ['estimateAccuracy', 0.8, undefined, []],
      ['onScaleShare', undefined, undefined, []],
      ['finishShare', undefined, undefined, []],
      ['velocityGrowth', undefined, undefined, [2.4, 5]],
    ]);
    expect(ratios.every(({ values }) => values.length === 2)).toBe(true);
  });

  test('of a team without a closed sprint is empty and in words', () => {
    const { past, ratios, velocityBaseline, growth, margin } = historyOf(TEAM, []);
    expect([past, velocityBaseline, growth]).toEqual([[], undefined, undefined]);
    for (const { values, chart, crossedAt } of ratios) {
      expect([values, crossedAt]).toEqual([[], []]);
      expect(chart).toEqual({
        undefined: { code: 'no-signal-yet', needed: 8, known: 0 },
      });
    }
    expect(margin.ofCommitments).toHaveProperty('undefined');
  });

  test('counts goals met beside commitments kept, over the sprints whose goal is known', () => {
    const kept = (share: number, goalMet?: GoalMet) => ({
      goalMet,
      commitmentPoints: 10,
      ratios: { ...aPastSprint().ratios, keptShare: share, surpriseRatio: 0 },
    });
    const past = pastSprintsOf([kept(1, 'yes'), kept(0.5, 'yes'), kept(0.9, 'partly'), kept(1)]);
    expect(goalsMet({ ...TEAM, surpriseInVerdict: true }, past)).toEqual({
      sprints: 3,
      met: 2,
      partly: 1,
      kept: 2,
    });
    expect(goalsMet({ ...TEAM, surpriseInVerdict: true }, past.slice(3))).toBeUndefined();
  });

  test('keeps its limits to what a ratio can be', () => {
    const wild = pastSprintsOf(
      [0, 1, 0, 1, 0, 1, 0, 1].map((value) => ({
        ratios: {
          ...aPastSprint().ratios,
          keptShare: value,
          surpriseRatio: value,
          estimateAccuracy: value - 1,
          finishShare: 2 * value,
        },
      })),
    );
    const limits = (name: RatioId) => {
      const { chart } = ratioOf(name, wild);
      return 'undefined' in chart ? undefined : chart.limits;
    };
    expect(limits('keptShare')).toEqual({ low: 0, high: 1 });
    // It has no upper end, and the finish share may exceed 1.
    expect(limits('surpriseRatio')?.low).toBe(0);
    expect(limits('surpriseRatio')?.high).toBeGreaterThan(1);
    expect(limits('finishShare')?.high).toBeGreaterThan(2);
    // The errors may exceed the load, so it may lie below 0.
    expect(limits('estimateAccuracy')?.low).toBeLessThan(-1);
    expect(limits('estimateAccuracy')?.high).toBe(1);
  });
});

describe('a crossed line', () => {
  // Thresholds are typed as percentages, so values on the line itself are common.
  const anyValue = fc.integer({ min: 0, max: 60 }).map((n) => n / 50);
  const noteIds = {
    keptShare: ['kept-share-low'],
    surpriseRatio: ['surprise-ratio-high'],
    pullInRatio: ['pull-in-ratio-high'],
    planShare: ['plan-share-low'],
    estimateAccuracy: ['estimate-accuracy-low'],
  } as const;

  test('is one for which the sprint’s verdict has a note, without the ceiling that speaks only as a signal', () => {
    fc.assert(
      fc.property(fc.array(anyValue, { minLength: 1, maxLength: 12 }), (values) => {
        const past = pastSprintsOf(
          values.map((value) => ({
            ratios: pastRatios({
              keptShare: Math.min(1, value),
              pullInRatio: value,
              surpriseRatio: value,
              planShare: Math.min(1, value),
              estimateAccuracy: Math.min(1, value),
            }),
          })),
        );
        for (const [ratio, ids] of Object.entries(noteIds)) {
          const noted = past.flatMap(({ ratios }, i) => {
            const notes = thresholdNotes({ ...ratios, velocityGrowth: 1 }, DEFAULT_THRESHOLDS);
            return notes.some(({ id }) => (ids as readonly string[]).includes(id)) ? [i] : [];
          });
          expect(ratioOf(ratio as RatioId, past).crossedAt).toEqual(noted);
        }
      }),
    );
  });

  test('is none where the ratio does not exist', () => {
    const none = undefinedBecause('no-commitment');
    const past = pastSprintsOf([{ ratios: { ...aPastSprint().ratios, keptShare: none } }]);
    expect(ratioOf('keptShare', past)).toMatchObject({ values: [none], crossedAt: [] });
  });
});

describe('velocity growth', () => {
  const past = pastSprintsOf([
    finishing(0, 0),
    finishing(10, 0),
    { ...finishing(20, 0), velocityPoints: undefined },
    finishing(20, 5),
  ]);

  test('is measured by the first sprint with a velocity; an unknown velocity has none', () => {
    expect(historyOf(TEAM, past).velocityBaseline?.sprintId).toBe('sprint-2');
    expect(ratioOf('velocityGrowth', past).values).toEqual([0, 1, UNKNOWN, 2.5]);
  });

  test('is measured by the sprint that the facilitator named, earlier sprints as well', () => {
    const team = { ...TEAM, baselineSprintId: 'sprint-4' };
    expect(historyOf(team, past).velocityBaseline?.sprintId).toBe('sprint-4');
    expect(ratioOf('velocityGrowth', past, team).values).toEqual([0, 0.4, UNKNOWN, 1]);
  });

  test('does not exist before anything was finished', () => {
    const nothing = pastSprintsOf([finishing(0, 0)]);
    expect(historyOf(TEAM, nothing).velocityBaseline).toBeUndefined();
    expect(ratioOf('velocityGrowth', nothing).values).toEqual([{ undefined: { code: 'no-baseline' } }]);
  });
});

describe('value growth', () => {
  test('is beside velocity growth, one a sprint, from the baseline sprint on', () => {
    const past = pastSprintsOf([
      { ...finishing(10, 0), recordedValue: 50 },
      { ...finishing(10, 0), recordedValue: 100 },
      { ...finishing(20, 0), velocityPoints: undefined, recordedValue: 120 },
      { ...finishing(15, 5), recordedValue: 300 },
    ]);
    const { growth } = historyOf({ ...TEAM, baselineSprintId: 'sprint-2' }, past);
    expect(growth?.map(({ valueGrowth, velocityGrowth }) => [valueGrowth, velocityGrowth])).toEqual([
      [undefinedBecause('before-valued-sprint'), undefinedBecause('before-valued-sprint')],
      [1, 1],
      [UNKNOWN, UNKNOWN],
      [3, 2],
    ]);
  });

  test('is left out until a value was recorded', () => {
    expect(historyOf(TEAM, pastSprintsOf([{}, {}])).growth).toBeUndefined();
  });
});

describe('the margin of error', () => {
  test('is that of velocity against commitment, and of the estimates', () => {
    const past = pastSprintsOf(
      [8, 10, 10, 10, 12].map((velocity) => ({ ...finishing(10, 0), velocityPoints: velocity })),
    );
    expect(historyOf(TEAM, past).margin).toMatchObject({
      ofCommitments: { sprints: 5, median: 1 },
      ofEstimates: { sprints: 5, median: 0.9 },
    });
  });
});
