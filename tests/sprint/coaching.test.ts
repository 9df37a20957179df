import { describe, expect, test } from 'vitest';
import type { CoachingNoteId } from '../../src/sprint/coaching-note.ts';
import type { SprintRatios } from '../../src/sprint/sprint-ratios.ts';
import { coachingNotes } from '../../src/sprint/summary.ts';
import { crossingOf } from '../../src/sprint/threshold-notes.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import { undefinedBecause } from '../../src/sprint/undefined-value.ts';
import { pastRatios } from '../support/past-ratios.ts';

const WITH_MARKS = { ...DEFAULT_THRESHOLDS, velocityGrowthFirstMark: 2.4, velocityGrowthLongRangeMark: 5 };

/** Every ratio lies exactly on its threshold, but below the marks of the velocity growth. */
const ON_THE_LINES: SprintRatios = {
  ...pastRatios({
    keptShare: 0.8,
    surpriseRatio: 0.2,
    pullInRatio: 0.2,
    planShare: 0.8,
    estimateAccuracy: 0.8,
  }),
  velocityGrowth: 2.39,
};

function notesFor(ratios: Partial<SprintRatios>) {
  return coachingNotes({ ...ON_THE_LINES, ...ratios }, WITH_MARKS);
}

test('a ratio on its threshold crosses nothing', () => {
  expect(notesFor({})).toEqual([]);
  expect(notesFor({ estimateAccuracy: 0.95 })).toEqual([]);
});

test.each<[CoachingNoteId, Partial<SprintRatios>, number, number]>([
  ['kept-share-low', { keptShare: 0.75 }, 0.75, 0.8],
  ['surprise-ratio-high', { surpriseRatio: 0.225 }, 0.225, 0.2],
  ['pull-in-ratio-high', { pullInRatio: 1.2 }, 1.2, 0.2],
  ['plan-share-low', { planShare: 0.79 }, 0.79, 0.8],
  ['estimate-accuracy-low', { estimateAccuracy: -0.1 }, -0.1, 0.8],
  ['estimate-accuracy-high', { estimateAccuracy: 1 }, 1, 0.95],
  ['velocity-growth-first-mark', { velocityGrowth: 2.4 }, 2.4, 2.4],
  ['velocity-growth-long-range-mark', { velocityGrowth: 5.5 }, 5.5, 5],
])(
  'a crossed threshold gives its one note, with the number and the threshold: %s',
  (id, ratios, value, threshold) => {
    expect(notesFor(ratios)).toEqual([{ id, value, threshold }]);
  },
);

test('of the two marks of the velocity growth only the higher one reached gets a note', () => {
  expect(notesFor({ velocityGrowth: 5 }).map((note) => note.id)).toEqual(['velocity-growth-long-range-mark']);
});

test('the marks of the velocity growth are off until the team sets them', () => {
  expect(coachingNotes({ ...ON_THE_LINES, velocityGrowth: 9 }, DEFAULT_THRESHOLDS)).toEqual([]);
});

test('a ratio that does not exist crosses nothing', () => {
  const none = undefinedBecause('no-commitment');
  const ratios = Object.fromEntries(Object.keys(ON_THE_LINES).map((name) => [name, none]));
  expect(notesFor(ratios)).toEqual([]);
});

test('several crossed thresholds give their notes in a fixed order', () => {
  const all = notesFor({
    keptShare: 0,
    surpriseRatio: 1,
    pullInRatio: 1,
    planShare: 0,
    estimateAccuracy: 0,
    velocityGrowth: 9,
  });
  expect(all.map((note) => note.id)).toEqual([
    'kept-share-low',
    'surprise-ratio-high',
    'pull-in-ratio-high',
    'plan-share-low',
    'estimate-accuracy-low',
    'velocity-growth-long-range-mark',
  ]);
});

test("notes go by the team's own thresholds", () => {
  const thresholds = { ...DEFAULT_THRESHOLDS, keptShareAtLeast: 0.9 };
  expect(coachingNotes(ON_THE_LINES, thresholds).map((note) => note.id)).toEqual(['kept-share-low']);
});

describe('what a note is about', () => {
  test('is its ratio, and which values call for it', () => {
    const crossing = crossingOf('pull-in-ratio-high', DEFAULT_THRESHOLDS);
    expect(crossing?.ratio).toBe('pullInRatio');
    expect([0.2, 0.21].map((value) => crossing?.isCrossedBy(value))).toEqual([false, true]);
    const mark = crossingOf('velocity-growth-first-mark', WITH_MARKS);
    expect([2.39, 2.4].map((value) => mark?.isCrossedBy(value))).toEqual([false, true]);
  });

  test('is no ratio for a note on a habit, or for a mark that is off', () => {
    expect(crossingOf('carry-over-repeated', DEFAULT_THRESHOLDS)).toBeUndefined();
    expect(crossingOf('answer-rate-low', DEFAULT_THRESHOLDS)).toBeUndefined();
    expect(crossingOf('velocity-growth-first-mark', DEFAULT_THRESHOLDS)).toBeUndefined();
  });
});
