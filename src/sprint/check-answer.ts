/**
 * Decides whether a member may say this about a card on this day. What it lets through the ledger can
 * fold with every word of it intact; what it refuses it names, so that the person can correct it.
 */
import type { Day } from './calendar.ts';
import type { AnswerFact, Card, CardFact } from './card.ts';
import { answersInForce, cardState, impliedWorkedPoints, standingAfter, surpriseWithin } from './ledger.ts';
import { isPoints, isPointsChange } from './points.ts';

/** What a member says about one card. */
export interface AnswerInput {
  readonly workedPoints: number | undefined;
  readonly leftPoints: number;
  /** Undefined when the member has not said why the card grew or shrank. */
  readonly surprisePoints: number | undefined;
}

export type AnswerProblem =
  | { readonly code: 'bad-left' }
  | { readonly code: 'bad-worked' }
  | { readonly code: 'bad-surprise' }
  | { readonly code: 'card-dropped'; readonly on: Day }
  | { readonly code: 'card-finished'; readonly on: Day }
  | { readonly code: 'not-an-owner' }
  | { readonly code: 'growth-unexplained'; readonly growthPoints: number }
  | {
      readonly code: 'surprise-out-of-range';
      readonly growthPoints: number;
      readonly leastPoints: number;
      readonly mostPoints: number;
    };

/** The state of the card just before the place where this member's answer for this day goes. */
interface PlaceInLedger {
  readonly previousLeftPoints: number;
  readonly surpriseSoFarPoints: number;
  /** The member's own answer in force for that day and card, which a new one would correct. */
  readonly corrects: AnswerFact | undefined;
}

/** Where in the ledger an answer by this member about this day goes, and the state of the card there. */
export function placeInLedger(
  card: Card,
  facts: readonly CardFact[],
  memberId: string,
  day: Day,
): PlaceInLedger {
  const inForce = answersInForce(facts);
  const own = inForce.findIndex((answer) => answer.memberId === memberId && answer.day === day);
  const later = inForce.findIndex((answer) => answer.day > day);
  const place = own >= 0 ? own : later >= 0 ? later : inForce.length;
  const before = standingAfter(card, inForce.slice(0, place));
  return {
    previousLeftPoints: before.leftPoints,
    surpriseSoFarPoints: before.surprisePoints,
    corrects: inForce[own],
  };
}

/** worked + left − previous left, with the worked that "only left" implies. */
export function growthOf(input: AnswerInput, previousLeftPoints: number): number {
  const worked = input.workedPoints ?? impliedWorkedPoints(previousLeftPoints, input.leftPoints);
  return worked + input.leftPoints - previousLeftPoints;
}

/**
 * Whether the card may be answered for on the day: it was not dropped, and it was open when the day
 * began or has been reopened since. So a second owner may still answer on the day when the first one
 * finished it.
 */
export function whyNotAnswerable(
  card: Card,
  facts: readonly CardFact[],
  memberId: string,
  day: Day,
): AnswerProblem | undefined {
  if (!card.ownerIds.includes(memberId)) return { code: 'not-an-owner' };
  const now = cardState(card, facts);
  if (now.droppedOn !== undefined) return { code: 'card-dropped', on: now.droppedOn };
  // No answer is about a day after `finishedOn`, so this never refuses a correction.
  if (!now.finished || now.finishedOn === undefined || now.finishedOn >= day) return undefined;
  return { code: 'card-finished', on: now.finishedOn };
}

/** The first thing that is wrong with an answer, or undefined when it can be recorded. */
export function whyNotAnswer(
  card: Card,
  facts: readonly CardFact[],
  memberId: string,
  day: Day,
  input: AnswerInput,
): AnswerProblem | undefined {
  const notAnswerable = whyNotAnswerable(card, facts, memberId, day);
  if (notAnswerable) return notAnswerable;
  if (!isPoints(input.leftPoints)) return { code: 'bad-left' };
  if (input.workedPoints !== undefined && !isPoints(input.workedPoints)) return { code: 'bad-worked' };
  const context = placeInLedger(card, facts, memberId, day);
  const growthPoints = growthOf(input, context.previousLeftPoints);
  if (input.surprisePoints === undefined) {
    return growthPoints > 0 ? { code: 'growth-unexplained', growthPoints } : undefined;
  }
  if (!isPointsChange(input.surprisePoints)) return { code: 'bad-surprise' };
  const nearest = surpriseWithin(input.surprisePoints, growthPoints, context.surpriseSoFarPoints);
  if (nearest === input.surprisePoints) return undefined;
  return {
    code: 'surprise-out-of-range',
    growthPoints,
    leastPoints: surpriseWithin(Number.NEGATIVE_INFINITY, growthPoints, context.surpriseSoFarPoints),
    mostPoints: surpriseWithin(Number.POSITIVE_INFINITY, growthPoints, context.surpriseSoFarPoints),
  };
}
