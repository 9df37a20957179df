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
      cards: [
        { cardId: 'card-1', sprints: 2 },
        { cardId: 'card-3', sprints: 4 },
      ],
    });
  });

  test('is not given for a card that stayed open once', () => {
    expect(habitNotes({ ...NO_HABITS_KNOWN, carriedOver: carried(1, 1) })).toEqual([]);
  });
});

describe('the note on the answer rate', () => {
  const notesAt = (met: number, prompts: number) =>
    habitNotes({ ...NO_HABITS_KNOWN, answers: { met, prompts } });

  test('holds the rate and the counts when the rate lies below 80%', () => {
    expect(notesAt(31, 50)).toEqual([
      { id: 'answer-rate-low', value: 0.62, threshold: 0.8, answers: { met: 31, prompts: 50 } },
    ]);
  });

  test('is not given on the line, nor when nobody was asked', () => {
    expect(notesAt(40, 50)).toEqual([]);
    expect(notesAt(0, 0)).toEqual([]);
    expect(answerRate({ met: 0, prompts: 0 })).toEqual({ undefined: { code: 'nobody-asked' } });
  });
});

test('a sprint that is over gets them after the notes on its ratios, and keeps the counts', () => {
  const yardstick = {
    scale: DEFAULT_SCALE,
    thresholds: DEFAULT_THRESHOLDS,
    baseline: undefined,
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
