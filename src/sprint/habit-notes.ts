/** The notes on habits that no ratio shows: cards carried on and on, and prompts left unanswered. */
import type { AnswerCount } from './answer-rate.ts';
import { answerRate } from './answer-rate.ts';
import type { CarriedOverCard, CoachingNote } from './coaching-note.ts';
import { formatAgainst } from './percent.ts';
import { isDefined } from './undefined-value.ts';

/** Ours, no published source: with one answer in five missing, the day's numbers are mostly those of days before. */
export const ANSWER_RATE_AT_LEAST = 0.8;
/** A card may miss one sprint's end by bad luck; twice in a row is a habit. Ours, no published source. */
export const CARRIED_OVER_SPRINTS = 2;

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
  if (cards.length === 0) return [];
  const [first] = cards as [CarriedOverCard];
  const crossed =
    cards.length === 1
      ? `One card has now been open at the end of ${first.sprints} sprints in a row.`
      : `${cards.length} cards have now been open at the end of two or more sprints in a row.`;
  return [
    {
      id: 'carry-over-repeated',
      crossed,
      mayMean:
        'A card that is carried on and on may be too large for a sprint, wait for something outside of the team, or matter less than it did.',
      tryNext:
        'At the next planning, split it into parts that can each be finished, or drop it; plan it whole only when what held it up is gone.',
      cards,
    },
  ];
}

function answerRateNote(answers: AnswerCount): CoachingNote[] {
  const rate = answerRate(answers);
  if (!isDefined(rate) || rate >= ANSWER_RATE_AT_LEAST) return [];
  const text = formatAgainst(rate, ANSWER_RATE_AT_LEAST);
  return [
    {
      id: 'answer-rate-low',
      crossed: `The answer rate is ${text.value}, ${text.distance} below its floor of ${text.threshold}: ${answers.met} of ${answers.prompts} daily prompts ${answers.met === 1 ? 'was' : 'were'} met.`,
      mayMean:
        'The numbers of this sprint rest on less than they could: until something is said, a card counts as unchanged, so growth shows late or never. The prompts may come at an awkward time, or ask about more cards than are in work.',
      tryNext:
        'Ask at the retrospective what would make the prompt easy to answer: another time of day, or fewer cards in work at once. “Nothing changed” takes one click, and so does “away”.',
    },
  ];
}
