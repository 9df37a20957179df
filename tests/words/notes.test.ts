import { describe, expect, test } from 'vitest';
import type { CoachingNote } from '../../src/sprint/coaching-note.ts';
import { noteWords } from '../../src/words/notes.ts';

const ALL: readonly [CoachingNote, string][] = [
  [
    { id: 'kept-share-low', value: 0.75, threshold: 0.8 },
    'The kept share is 75%, 5 percentage points below its floor of 80%.',
  ],
  [
    { id: 'surprise-ratio-high', value: 0.225, threshold: 0.2 },
    'The surprise ratio is 22.5%, 2.5 percentage points above its ceiling of 20%.',
  ],
  [
    { id: 'pull-in-ratio-high', value: 1.2, threshold: 0.2 },
    'The pull-in ratio is 120%, 100 percentage points above its ceiling of 20%.',
  ],
  [
    { id: 'plan-share-low', value: 0.79, threshold: 0.8 },
    'The plan share is 79%, 1 percentage point below its floor of 80%.',
  ],
  [
    { id: 'estimate-accuracy-low', value: -0.1, threshold: 0.8 },
    'The estimate accuracy is -10%, 90 percentage points below its floor of 80%.',
  ],
  [
    { id: 'estimate-accuracy-high', value: 1, threshold: 0.95 },
    'The estimate accuracy is 100%, 5 percentage points above its ceiling of 95%.',
  ],
  [
    { id: 'velocity-growth-first-mark', value: 2.4, threshold: 2.4 },
    'The velocity growth is 240%, right on the mark.',
  ],
  [
    { id: 'velocity-growth-long-range-mark', value: 5.1, threshold: 5 },
    'The velocity growth is 510%, 10 percentage points past the mark of 500%.',
  ],
  [
    { id: 'carry-over-repeated', cards: [{ cardId: 'a', sprints: 3 }] },
    'A card has now been open at the end of 3 sprints in a row.',
  ],
  [
    {
      id: 'carry-over-repeated',
      cards: [
        { cardId: 'a', sprints: 2 },
        { cardId: 'b', sprints: 4 },
      ],
    },
    '2 cards have now been open at the end of two or more sprints in a row.',
  ],
  [
    { id: 'answer-rate-low', value: 0.62, threshold: 0.8, answers: { met: 31, prompts: 50 } },
    'The answer rate is 62%, 18 percentage points below its floor of 80%: 31 of 50 daily prompts were answered. A card that nobody answers for counts as unchanged, so what grew or was finished there shows late or never.',
  ],
];

test.each(ALL)('says the number and the distance: $id', (note, crossed) => {
  expect(noteWords(note).crossed).toBe(crossed);
});

test('a value a hair beyond its threshold does not look as if it lay on it', () => {
  expect(noteWords({ id: 'kept-share-low', value: 0.79996, threshold: 0.8 }).crossed).toBe(
    'The kept share is 79.996%, 0.004 percentage points below its floor of 80%.',
  );
});

describe('every note', () => {
  test.each(ALL)('says what it may mean and one thing to try, to the team and without blame: $id', (note) => {
    const { crossed, mayMean, tryNext } = noteWords(note);
    for (const text of [mayMean, tryNext]) expect(text).toMatch(/^[A-Z].{20,}\.$/);
    expect(`${crossed} ${mayMean} ${tryNext}`).not.toMatch(
      /\b(you|your|he|she|member|fault|blame|fail(ed|ure)?|lazy|bad|must)\b/i,
    );
  });
});
