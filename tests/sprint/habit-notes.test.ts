import { describe, expect, test } from 'vitest';
import { answerRate } from '../../src/sprint/answer-rate.ts';
import type { CarriedOverCard } from '../../src/sprint/coaching-note.ts';
import { habitNotes, NO_HABITS_KNOWN } from '../../src/sprint/habit-notes.ts';
import { ledgerOf } from '../../src/sprint/ledger.ts';
import { DEFAULT_SCALE } from '../../src/sprint/scale.ts';
import { closingSummary } from '../../src/sprint/summary.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import { aCard } from './sprint-facts.ts';

const carried = (...sprints: number[]): CarriedOverCard[] =>
  sprints.map((count, i) => ({ cardId: `card-${i + 1}`, sprints: count }));

describe('the note on cards carried over again and again', () => {
  test('names the cards open at the end of two or more sprints in a row, and no other', () => {
    const [note, ...others] = habitNotes({ ...NO_HABITS_KNOWN, carriedOver: carried(2, 1, 4) });
    expect(others).toEqual([]);
    expect(note).toMatchObject({
      id: 'carry-over-repeated',
      crossed: '2 cards have now been open at the end of two or more sprints in a row.',
      cards: [
        { cardId: 'card-1', sprints: 2 },
        { cardId: 'card-3', sprints: 4 },
      ],
    });
  });

  test('says of a single card in how many sprints', () => {
    expect(habitNotes({ ...NO_HABITS_KNOWN, carriedOver: carried(3) })[0]?.crossed).toBe(
      'One card has now been open at the end of 3 sprints in a row.',
    );
  });

  test('is not given for a card that stayed open once', () => {
    expect(habitNotes({ ...NO_HABITS_KNOWN, carriedOver: carried(1, 1) })).toEqual([]);
  });
});

describe('the note on the answer rate', () => {
  const notesAt = (met: number, prompts: number) =>
    habitNotes({ ...NO_HABITS_KNOWN, answers: { met, prompts } });

  test('says the rate, the distance and the counts when the rate lies below 80%', () => {
    expect(notesAt(31, 50).map(({ id, crossed }) => [id, crossed])).toEqual([
      [
        'answer-rate-low',
        'The answer rate is 62%, 18 percentage points below its floor of 80%: 31 of 50 daily prompts were met.',
      ],
    ]);
  });

  test('is not given on the line, nor when nobody was asked', () => {
    expect(notesAt(40, 50)).toEqual([]);
    expect(notesAt(0, 0)).toEqual([]);
    expect(answerRate({ met: 0, prompts: 0 })).toEqual({ undefined: { code: 'nobody-asked' } });
  });

  test('a rate a hair below the line does not look as if it lay on it', () => {
    expect(notesAt(7999, 10_000)[0]?.crossed).toContain('79.99%, 0.01 percentage points below');
  });
});

test('both speak to the team, without blame', () => {
  const notes = habitNotes({ answers: { met: 1, prompts: 9 }, carriedOver: carried(2) });
  expect(notes).toHaveLength(2);
  for (const { crossed, mayMean, tryNext } of notes) {
    for (const text of [mayMean, tryNext]) expect(text).toMatch(/^[A-Z].{20,}\.$/);
    expect(`${crossed} ${mayMean} ${tryNext}`).not.toMatch(
      /\b(you|your|he|she|member|fault|blame|fail(ed|ure)?|lazy|bad|must)\b/i,
    );
  }
});

test('a sprint that is over gets them after the notes on its ratios, and keeps the counts', () => {
  const yardstick = {
    scale: DEFAULT_SCALE,
    thresholds: DEFAULT_THRESHOLDS,
    baselineVelocityPoints: undefined,
  };
  const answers = { met: 1, prompts: 4 };
  const summary = closingSummary(ledgerOf([aCard()], []), yardstick, { answers, carriedOver: carried(2) });
  expect(summary.notes.map(({ id }) => id)).toEqual([
    'kept-share-low',
    'estimate-accuracy-high',
    'carry-over-repeated',
    'answer-rate-low',
  ]);
  expect(summary.answers).toEqual(answers);
  expect(closingSummary(ledgerOf([aCard()], []), yardstick)).not.toHaveProperty('answers');
});
