/** A summary and ratios as the versions before codes wrote them, sentences included, and what becomes of them. */
import type { PostedNote } from '../../src/sprint/coaching-note.ts';
import type { SprintSummary } from '../../src/sprint/summary.ts';

const TOTALS = {
  commitmentPoints: 20,
  pulledInPoints: 3,
  surprisePoints: 1,
  driftPoints: -0.5,
  growthPoints: 0.5,
  workedPoints: 0,
  leftPoints: 23.5,
  openLeftPoints: 23.5,
  loadPoints: 24,
  velocityPoints: 15,
  committedFinishedPoints: 15,
  estimateErrorPoints: 0.5,
  plainEstimateErrorPoints: 0.5,
  finishedCards: 0,
  onScaleCards: 0,
};

const NUMBERS = {
  keptShare: 0.75,
  pullInRatio: 0.15,
  surpriseRatio: 0.05,
  planShare: 20 / 24,
  estimateAccuracy: 0.9792,
};

const VERDICT = {
  verdict: 'missed',
  failedTests: [{ id: 'keptShare', value: 0.75, threshold: 0.805, distance: 0.805 - 0.75 }],
} as const;

const ANSWERS = { prompts: 7, met: 3 };
const CARRIED = [{ cardId: 'card-1', sprints: 3 }];

function spokenNote(id: string, crossed: string): object {
  return { id, crossed, mayMean: 'One thing or another.', tryNext: 'Try one thing.' };
}

function postedNote(postedId: string, crossed: string): PostedNote {
  return {
    id: 'as-posted',
    postedId,
    crossed,
    mayMean: 'One thing or another.',
    tryNext: 'Try one thing.',
  };
}

/** With a note of every kind, the last two with numbers that aren't known. */
export const SPOKEN_SUMMARY: object = {
  totals: TOTALS,
  ratios: {
    ...NUMBERS,
    onScaleShare: { undefined: 'No card was finished.' },
    finishShare: { undefined: 'Nobody knows any more.' },
    velocityGrowth: 2.4,
  },
  verdict: VERDICT,
  notes: [
    // The threshold is rounded in the sentence, and exact in the failed test.
    spokenNote('kept-share-low', 'The kept share is 75%, 5.5 percentage points below its floor of 80.5%.'),
    // As the first version wrote percent.
    spokenNote('plan-share-low', 'The plan share is 83.3 %, 1.7 percentage points below its floor of 85 %.'),
    spokenNote(
      'estimate-accuracy-high',
      'The estimate accuracy is 97.9%, 2.9 percentage points above its ceiling of 95%.',
    ),
    spokenNote('velocity-growth-first-mark', 'The velocity growth is 240%, right on the mark.'),
    {
      ...spokenNote('carry-over-repeated', 'One card has now been open at the end of 3 sprints in a row.'),
      cards: CARRIED,
    },
    spokenNote(
      'answer-rate-low',
      'The answer rate is 42.9%, 37.1 percentage points below its floor of 80%: 3 of 7 daily prompts were met.',
    ),
    spokenNote('surprise-ratio-high', 'The surprise ratio was high.'),
    spokenNote('unknown', 'Something was crossed.'),
  ],
  answers: ANSWERS,
};

const NOTES: SprintSummary['notes'] = [
  { id: 'kept-share-low', value: 0.75, threshold: 0.805 },
  { id: 'plan-share-low', value: 20 / 24, threshold: 0.85 },
  { id: 'estimate-accuracy-high', value: 0.9792, threshold: 0.95 },
  { id: 'velocity-growth-first-mark', value: 2.4, threshold: 2.4 },
  { id: 'carry-over-repeated', cards: CARRIED },
  { id: 'answer-rate-low', value: 3 / 7, threshold: 0.8, answers: ANSWERS },
  postedNote('surprise-ratio-high', 'The surprise ratio was high.'),
  postedNote('unknown', 'Something was crossed.'),
];

/** In the database. */
export const CODED_SUMMARY: object = {
  totals: TOTALS,
  ratios: {
    ...NUMBERS,
    onScaleShare: { undefined: 'no-card-finished' },
    finishShare: { undefined: 'Nobody knows any more.' },
    velocityGrowth: 2.4,
  },
  verdict: VERDICT,
  notes: [],
  codedNotes: NOTES,
  answers: ANSWERS,
};

/** As it is read. */
export const READ_SUMMARY: SprintSummary = {
  totals: TOTALS,
  ratios: {
    ...NUMBERS,
    onScaleShare: { undefined: { code: 'no-card-finished' } },
    finishShare: { undefined: { code: 'as-posted', sentence: 'Nobody knows any more.' } },
    velocityGrowth: 2.4,
  },
  verdict: VERDICT,
  notes: NOTES,
  answers: ANSWERS,
};

/** Every reason that ratios were kept with, and its code. An unknown sentence stays. */
export const SPOKEN_REASONS: readonly (readonly [kept: string | object, coded: string])[] = [
  ['There was no commitment.', 'no-commitment'],
  ['The sprint held no work.', 'no-load'],
  ['No card was finished.', 'no-card-finished'],
  ['No work was reported.', 'no-work-reported'],
  ['There is no baseline sprint yet.', 'no-baseline'],
  ['The import doesn’t hold the cards.', 'cards-not-imported'],
  ['The import doesn’t say how much of the commitment was finished.', 'finished-commitment-not-imported'],
  ['The import doesn’t say how much was pulled in.', 'pulled-in-work-not-imported'],
  ['The import doesn’t say how much surprise work there was.', 'surprise-work-not-imported'],
  [
    'The import doesn’t say how much was pulled in, or how much surprise work there was.',
    'load-not-imported',
  ],
  ['The import doesn’t say how much was finished, or how much was worked.', 'work-not-imported'],
  [{ code: 'not-imported', what: 'cards' }, 'cards-not-imported'],
  [{ code: 'not-imported', what: 'finished-commitment' }, 'finished-commitment-not-imported'],
  [{ code: 'not-imported', what: 'pulled-in-work' }, 'pulled-in-work-not-imported'],
  [{ code: 'not-imported', what: 'surprise-work' }, 'surprise-work-not-imported'],
  [{ code: 'not-imported', what: 'load' }, 'load-not-imported'],
  [{ code: 'not-imported', what: 'finished-or-worked' }, 'work-not-imported'],
  ['Nobody knows any more.', 'Nobody knows any more.'],
];
