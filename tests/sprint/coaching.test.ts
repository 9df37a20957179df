import { describe, expect, test } from 'vitest';
import { coachingNotes } from '../../src/sprint/coaching.ts';
import type { CoachingNoteId } from '../../src/sprint/coaching-note.ts';
import type { SprintRatios } from '../../src/sprint/sprint-ratios.ts';
import { crossingOf } from '../../src/sprint/threshold-notes.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import { undefinedBecause } from '../../src/sprint/undefined-value.ts';

/** Every ratio lies exactly on its threshold, but below the marks of the velocity growth. */
const ON_THE_LINES: SprintRatios = {
  keptShare: 0.8,
  surpriseRatio: 0.2,
  pullInRatio: 0.2,
  planShare: 0.8,
  estimateAccuracy: 0.8,
  onScaleShare: 0,
  finishShare: 0,
  velocityGrowth: 2.39,
};

function notesFor(ratios: Partial<SprintRatios>) {
  return coachingNotes({ ...ON_THE_LINES, ...ratios }, DEFAULT_THRESHOLDS);
}

test('a ratio on its threshold crosses nothing', () => {
  expect(notesFor({})).toEqual([]);
  expect(notesFor({ estimateAccuracy: 0.95 })).toEqual([]);
});

describe('a crossed threshold gives its one note, which says the number and the distance', () => {
  const cases: [CoachingNoteId, Partial<SprintRatios>, string][] = [
    [
      'kept-share-low',
      { keptShare: 0.75 },
      'The kept share is 75%, 5 percentage points below its floor of 80%.',
    ],
    [
      'surprise-ratio-high',
      { surpriseRatio: 0.225 },
      'The surprise ratio is 22.5%, 2.5 percentage points above its ceiling of 20%.',
    ],
    [
      'pull-in-ratio-high',
      { pullInRatio: 1.2 },
      'The pull-in ratio is 120%, 100 percentage points above its ceiling of 20%.',
    ],
    [
      'plan-share-low',
      { planShare: 0.79 },
      'The plan share is 79%, 1 percentage point below its floor of 80%.',
    ],
    [
      'estimate-accuracy-low',
      { estimateAccuracy: -0.1 },
      'The estimate accuracy is -10%, 90 percentage points below its floor of 80%.',
    ],
    [
      'estimate-accuracy-high',
      { estimateAccuracy: 1 },
      'The estimate accuracy is 100%, 5 percentage points above its ceiling of 95%.',
    ],
    [
      'velocity-growth-first-mark',
      { velocityGrowth: 2.4 },
      'The velocity growth is 240%, right on the mark.',
    ],
    [
      'velocity-growth-first-mark',
      { velocityGrowth: 2.5 },
      'The velocity growth is 250%, 10 percentage points past the mark of 240%.',
    ],
  ];
  test.each(cases)('%s', (id, ratios, crossed) => {
    const notes = notesFor(ratios);
    expect(notes.map((note) => [note.id, note.crossed])).toEqual([[id, crossed]]);
  });

  test('a value a hair beyond its threshold does not look as if it lay on it', () => {
    expect(notesFor({ keptShare: 0.79996 })[0]?.crossed).toBe(
      'The kept share is 79.996%, 0.004 percentage points below its floor of 80%.',
    );
  });
});

test('of the two marks of the velocity growth only the higher one reached gets a note', () => {
  expect(notesFor({ velocityGrowth: 5 }).map((note) => note.id)).toEqual(['velocity-growth-long-range-mark']);
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

test('every note says what it may mean and one thing to try, to the team and without blame', () => {
  const notes = [
    ...notesFor({ keptShare: 0, surpriseRatio: 1, pullInRatio: 1, planShare: 0, estimateAccuracy: 0 }),
    ...notesFor({ estimateAccuracy: 1, velocityGrowth: 2.4 }),
    ...notesFor({ velocityGrowth: 5 }),
  ];
  expect(new Set(notes.map((note) => note.id)).size).toBe(8);
  for (const note of notes) {
    for (const text of [note.mayMean, note.tryNext]) expect(text).toMatch(/^[A-Z].{20,}\.$/);
    expect(`${note.crossed} ${note.mayMean} ${note.tryNext}`).not.toMatch(
      /\b(you|your|he|she|member|fault|blame|fail(ed|ure)?|lazy|bad|must)\b/i,
    );
  }
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
    const mark = crossingOf('velocity-growth-first-mark', DEFAULT_THRESHOLDS);
    expect([2.39, 2.4].map((value) => mark?.isCrossedBy(value))).toEqual([false, true]);
  });

  test('is no ratio for a note on a habit', () => {
    expect(crossingOf('carry-over-repeated', DEFAULT_THRESHOLDS)).toBeUndefined();
    expect(crossingOf('answer-rate-low', DEFAULT_THRESHOLDS)).toBeUndefined();
  });
});
