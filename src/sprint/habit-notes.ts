/** The notes on habits that no ratio shows: cards carried over again and again, and prompts left unanswered. */
import { type AnswerCount, answerRate } from './answer-rate.ts';
import type { CarriedOverCard, CoachingNote } from './coaching-note.ts';
import { isDefined } from './undefined-value.ts';

/** Ours, no published source: with one answer in five missing, the day's numbers are mostly those of days before. */
export const ANSWER_RATE_AT_LEAST = 0.8;
/** Below this the sprint's numbers mostly tell of silence. Ours, no published source. */
export const ANSWERED_MOSTLY = 0.5;
/** A card may miss one sprint's end by bad luck; twice in a row is a habit. Ours, no published source. */
const CARRIED_OVER_SPRINTS = 2;

/** What is known of a sprint beyond its own cards. */
export interface SprintHabits {
  readonly answers: AnswerCount;
  /** Cards open at the end of this sprint and of the ones right before it, each with the number of sprints. */
  readonly carriedOver: readonly CarriedOverCard[];
}

export const NO_HABITS_KNOWN: SprintHabits = { answers: { prompts: 0, met: 0 }, carriedOver: [] };

/** The notes that the habits call for, in a fixed order. */
export function habitNotes({ answers, carriedOver }: SprintHabits): CoachingNote[] {
  return [...carryOverNote(carriedOver), ...answerRateNote(answers)];
}

function carryOverNote(carriedOver: readonly CarriedOverCard[]): CoachingNote[] {
  const cards = carriedOver.filter(({ sprints }) => sprints >= CARRIED_OVER_SPRINTS);
  return cards.length === 0 ? [] : [{ id: 'carry-over-repeated', cards }];
}

function answerRateNote(answers: AnswerCount): CoachingNote[] {
  const rate = answerRate(answers);
  if (!isDefined(rate) || rate >= ANSWER_RATE_AT_LEAST) return [];
  return [{ id: 'answer-rate-low', value: rate, threshold: ANSWER_RATE_AT_LEAST, answers }];
}
