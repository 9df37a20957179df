/**
 * The ledger: folds the facts about a card, in order, into what was worked, what is left and how the
 * card grew. It never refuses: what a member may say is decided in `check-answer.ts` before a fact is
 * recorded, and a later correction may change what an earlier fact now means.
 */
import type { Day } from './calendar.ts';
import type { AnswerFact, Card, CardFact } from './card.ts';

/** One answer with what follows from it. All amounts are points. */
export interface LedgerEntry {
  readonly answer: AnswerFact;
  readonly previousLeftPoints: number;
  readonly workedPoints: number;
  readonly leftPoints: number;
  /** worked + left − previous left; negative when the card shrank. */
  readonly growthPoints: number;
  readonly surprisePoints: number;
  readonly driftPoints: number;
}

/** What the answers about a card add up to. All amounts are points. */
export interface Standing {
  readonly workedPoints: number;
  readonly leftPoints: number;
  readonly surprisePoints: number;
  readonly driftPoints: number;
  readonly entries: readonly LedgerEntry[];
}

/**
 * How a card stands. Conservation holds at every moment:
 * `card.estimatePoints + surprisePoints + driftPoints === workedPoints + leftPoints`.
 */
export interface CardState extends Standing {
  readonly card: Card;
  /** worked + left, as last known. */
  readonly trueSizePoints: number;
  readonly finished: boolean;
  /** The day of the last answer, which left nothing; undefined while the card is open. */
  readonly finishedOn: Day | undefined;
  readonly droppedOn: Day | undefined;
}

/**
 * The answers that count, in the order in which they count: a correction takes the place of the answer
 * that it replaces, and an answer about an earlier day goes before those of later days. The facts must
 * hold the superseded answers as well, since they say which place a correction takes.
 */
export function answersInForce(facts: readonly CardFact[]): AnswerFact[] {
  const firstOrder = new Map<string, number>();
  const inForce = new Map<string, AnswerFact>();
  for (const fact of [...facts].sort((a, b) => a.order - b.order)) {
    if (fact.kind !== 'answer') continue;
    const slot = JSON.stringify([fact.cardId, fact.memberId, fact.day]);
    if (!firstOrder.has(slot)) firstOrder.set(slot, fact.order);
    inForce.set(slot, fact);
  }
  return [...inForce]
    .map(([slot, answer]) => ({ answer, place: firstOrder.get(slot) as number }))
    .sort((a, b) => compareDays(a.answer.day, b.answer.day) || a.place - b.place)
    .map(({ answer }) => answer);
}

function compareDays(a: Day, b: Day): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/**
 * The part of a growth that may be surprise work, nearest to what the member said: within the growth
 * when the card grew, and no more than the surprise so far when it shrank.
 */
export function surpriseWithin(
  statedPoints: number,
  growthPoints: number,
  surpriseSoFarPoints: number,
): number {
  const least = Math.max(Math.min(growthPoints, 0), -surpriseSoFarPoints);
  const most = Math.max(growthPoints, 0);
  // `+ 0` turns a −0 from the negation into 0.
  return Math.min(Math.max(statedPoints, least), most) + 0;
}

/** Points worked when the member gave only what is left: the decrease, or 0 if it rose. */
export function impliedWorkedPoints(previousLeftPoints: number, leftPoints: number): number {
  return Math.max(previousLeftPoints - leftPoints, 0);
}

function entryFor(answer: AnswerFact, previousLeftPoints: number, surpriseSoFarPoints: number): LedgerEntry {
  const { leftPoints } = answer;
  const workedPoints = answer.workedPoints ?? impliedWorkedPoints(previousLeftPoints, leftPoints);
  const growthPoints = workedPoints + leftPoints - previousLeftPoints;
  const surprisePoints = surpriseWithin(answer.surprisePoints, growthPoints, surpriseSoFarPoints);
  const driftPoints = growthPoints - surprisePoints;
  return { answer, previousLeftPoints, workedPoints, leftPoints, growthPoints, surprisePoints, driftPoints };
}

/** Folds answers about one card that are in force and in order already, as `answersInForce` gives them. */
export function standingAfter(card: Card, inForce: readonly AnswerFact[]): Standing {
  let workedPoints = 0;
  let leftPoints = card.estimatePoints;
  let surprisePoints = 0;
  let driftPoints = 0;
  const entries: LedgerEntry[] = [];
  for (const answer of inForce) {
    const entry = entryFor(answer, leftPoints, surprisePoints);
    workedPoints += entry.workedPoints;
    leftPoints = entry.leftPoints;
    surprisePoints += entry.surprisePoints;
    driftPoints += entry.driftPoints;
    entries.push(entry);
  }
  return { workedPoints, leftPoints, surprisePoints, driftPoints, entries };
}

/**
 * Whether the card was reopened and nobody has answered about it since: neither about a later day nor,
 * afterwards, about the same day. Correcting an earlier day says nothing about the reopening.
 */
function isReopened(facts: readonly CardFact[], inForce: readonly AnswerFact[]): boolean {
  return facts.some(
    (fact) =>
      fact.kind === 'reopen' &&
      !inForce.some(({ day, order }) => day > fact.day || (day === fact.day && order > fact.order)),
  );
}

/** Folds the facts about one card; facts about other cards must not be among them. */
export function cardState(card: Card, facts: readonly CardFact[]): CardState {
  const inForce = answersInForce(facts);
  const standing = standingAfter(card, inForce);
  const { workedPoints, leftPoints, entries } = standing;
  const dropped = facts.filter((fact) => fact.kind === 'drop').sort((a, b) => a.order - b.order)[0];
  // A card estimated at 0 points is not finished before somebody says so.
  const finished = entries.length > 0 && leftPoints === 0 && !dropped && !isReopened(facts, inForce);
  return {
    card,
    ...standing,
    trueSizePoints: workedPoints + leftPoints,
    finished,
    finishedOn: finished ? (entries.at(-1) as LedgerEntry).answer.day : undefined,
    droppedOn: dropped?.day,
  };
}

/** Folds a sprint's facts card by card, in the order of the cards. */
export function ledgerOf(cards: readonly Card[], facts: readonly CardFact[]): CardState[] {
  const byCard = Map.groupBy(facts, (fact) => fact.cardId);
  return cards.map((card) => cardState(card, byCard.get(card.id) ?? []));
}
