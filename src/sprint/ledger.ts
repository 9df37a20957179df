/**
 * The ledger: folds the facts about a card, in order, into what was worked, what is left and how the
 * card grew. It never refuses: what a member may say is decided in `check-answer.ts` before a fact is
 * recorded, and a later correction may change what an earlier fact now means.
 */
import { type Block, blocksOf } from './blocks.ts';
import type { Day } from './calendar.ts';
import type { AnswerFact, Card, CardChangeFact, CardFact } from './card.ts';

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
interface Standing {
  readonly workedPoints: number;
  readonly leftPoints: number;
  readonly surprisePoints: number;
  readonly driftPoints: number;
}

/**
 * The state of a card. Conservation holds at every moment:
 * `card.estimatePoints + surprisePoints + driftPoints === workedPoints + leftPoints`.
 */
export interface CardState extends Standing {
  readonly card: Card;
  readonly entries: readonly LedgerEntry[];
  /** worked + left, as last known. */
  readonly trueSizePoints: number;
  readonly finished: boolean;
  /** The day of the last answer, which left nothing; undefined while the card is open. */
  readonly finishedOn: Day | undefined;
  /** Undefined also when the drop was taken back. */
  readonly droppedOn: Day | undefined;
  /** In order; the last one is not ended while the card is blocked. */
  readonly blocks: readonly Block[];
  /** When it was out of the sprint: from the day of a drop until the day on which that was taken back. */
  readonly outOfSprint: readonly OutOfSprint[];
}

interface OutOfSprint {
  readonly from: Day;
  /** Undefined: it is still out. */
  readonly until: Day | undefined;
}

/**
 * The answers about one card that count, in the order in which they count: a correction takes the place of the answer
 * that it replaces, and an answer about an earlier day goes before those of later days. The facts must hold the
 * superseded answers as well, since they say which place a correction takes.
 */
export function answersInForce(facts: readonly CardFact[]): AnswerFact[] {
  const inForce: AnswerFact[] = [];
  for (const fact of inOrder(facts)) if (fact.kind === 'answer') putInForce(inForce, fact);
  return inForce;
}

/** Each comes later than what is in force already. */
function putInForce(inForce: AnswerFact[], answer: AnswerFact): void {
  // Reading `inForce[-1]` for the first answer would slow down all these reads, by a tenth of the ledger's time.
  const last = inForce.at(-1);
  if (last === undefined || last.day < answer.day) {
    inForce.push(answer);
    return;
  }
  const place = placeFor(answer, inForce);
  const corrected = correctedBy(answer, inForce, place);
  if (corrected === undefined) inForce.splice(place, 0, answer);
  else inForce[corrected] = answer;
}

/** The store gives them in order already. */
function inOrder(facts: readonly CardFact[]): readonly CardFact[] {
  for (let i = 1; i < facts.length; i += 1) {
    if ((facts[i - 1] as CardFact).order > (facts[i] as CardFact).order)
      return [...facts].sort((a, b) => a.order - b.order);
  }
  return facts;
}

/** Behind the answers about its day and those before: mostly the end, so that is where to look from. */
function placeFor({ day }: AnswerFact, inForce: readonly AnswerFact[]): number {
  let place = inForce.length;
  while (place > 0 && (inForce[place - 1] as AnswerFact).day > day) place -= 1;
  return place;
}

/** The place of the same member's answer about the same day; undefined when there is none. */
function correctedBy(
  { cardId, day, memberId }: AnswerFact,
  inForce: readonly AnswerFact[],
  place: number,
): number | undefined {
  for (let i = place - 1; i >= 0; i -= 1) {
    const other = inForce[i] as AnswerFact;
    if (other.day !== day) return undefined;
    if (other.memberId === memberId && other.cardId === cardId) return i;
  }
  return undefined;
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
  // Most say so, and it is always within the limits: to skip them takes a twentieth off the time of many ratios.
  if (statedPoints === 0) return 0;
  const least = Math.max(Math.min(growthPoints, 0), -surpriseSoFarPoints);
  const most = Math.max(growthPoints, 0);
  // `+ 0` turns a −0 from the negation into 0.
  return Math.min(Math.max(statedPoints, least), most) + 0;
}

/** Points worked when the member gave only what is left: the decrease, or 0 if it rose. */
export function impliedWorkedPoints(previousLeftPoints: number, leftPoints: number): number {
  return Math.max(previousLeftPoints - leftPoints, 0);
}

/** Folds answers about one card that are in force and in order already, as `answersInForce` gives them. */
export function standingAfter(card: Card, inForce: readonly AnswerFact[]): Standing {
  let workedPoints = 0;
  let leftPoints = card.estimatePoints;
  let surprisePoints = 0;
  for (const answer of inForce) {
    const worked = answer.workedPoints ?? impliedWorkedPoints(leftPoints, answer.leftPoints);
    const growthPoints = worked + answer.leftPoints - leftPoints;
    surprisePoints += surpriseWithin(answer.surprisePoints, growthPoints, surprisePoints);
    workedPoints += worked;
    leftPoints = answer.leftPoints;
  }
  // By conservation; points are exact in binary, so it is what adding up each answer's drift gives.
  const driftPoints = workedPoints + leftPoints - card.estimatePoints - surprisePoints;
  return { workedPoints, leftPoints, surprisePoints, driftPoints };
}

/** What follows from each of the answers that `standingAfter` folds. */
function entriesOf(card: Card, inForce: readonly AnswerFact[]): LedgerEntry[] {
  let previousLeftPoints = card.estimatePoints;
  let surpriseSoFarPoints = 0;
  return inForce.map((answer) => {
    const { leftPoints } = answer;
    const workedPoints = answer.workedPoints ?? impliedWorkedPoints(previousLeftPoints, leftPoints);
    const growthPoints = workedPoints + leftPoints - previousLeftPoints;
    const surprisePoints = surpriseWithin(answer.surprisePoints, growthPoints, surpriseSoFarPoints);
    const driftPoints = growthPoints - surprisePoints;
    const amounts = {
      previousLeftPoints,
      workedPoints,
      leftPoints,
      growthPoints,
      surprisePoints,
      driftPoints,
    };
    previousLeftPoints = leftPoints;
    surpriseSoFarPoints += surprisePoints;
    return { answer, ...amounts };
  });
}

/**
 * Whether the card was reopened and nobody has answered about it since: neither about a later day nor,
 * afterwards, about the same day. Correcting an earlier day says nothing about the reopening.
 */
function isReopened(changes: readonly CardFact[], inForce: readonly AnswerFact[]): boolean {
  return changes.some(
    (fact) =>
      fact.kind === 'reopen' &&
      !inForce.some(({ day, order }) => day > fact.day || (day === fact.day && order > fact.order)),
  );
}

function outOfSprint(changes: readonly CardChangeFact[] | undefined): readonly OutOfSprint[] {
  if (changes === undefined) return NEVER_OUT;
  const spans: OutOfSprint[] = [];
  for (const { kind, day } of changes) {
    const last = spans.at(-1);
    const isOut = last !== undefined && last.until === undefined;
    if (kind === 'drop' && !isOut) spans.push({ from: day, until: undefined });
    if (kind === 'undrop' && isOut) spans[spans.length - 1] = { from: last.from, until: day };
  }
  return spans;
}

const NEVER_OUT: readonly OutOfSprint[] = [];

/** What is known of a card, put in order. */
interface CardRecord {
  readonly card: Card;
  readonly inForce: AnswerFact[];
  /** Mostly none. */
  changes: CardChangeFact[] | undefined;
}

function takeFact(record: CardRecord, fact: CardFact): void {
  if (fact.kind === 'answer') putInForce(record.inForce, fact);
  else if (record.changes) record.changes.push(fact);
  else record.changes = [fact];
}

/** A class, so that `entries` and `blocks` can wait until somebody looks: sums need none of it, and it is most of the work. */
class FoldedCard implements CardState {
  readonly card: Card;
  readonly workedPoints: number;
  readonly leftPoints: number;
  readonly surprisePoints: number;
  readonly driftPoints: number;
  readonly trueSizePoints: number;
  readonly finished: boolean;
  readonly finishedOn: Day | undefined;
  readonly droppedOn: Day | undefined;
  readonly outOfSprint: readonly OutOfSprint[];
  private readonly inForce: readonly AnswerFact[];
  private readonly changes: readonly CardChangeFact[] | undefined;

  constructor({ card, inForce, changes }: CardRecord) {
    const { workedPoints, leftPoints, surprisePoints, driftPoints } = standingAfter(card, inForce);
    this.card = card;
    this.workedPoints = workedPoints;
    this.leftPoints = leftPoints;
    this.surprisePoints = surprisePoints;
    this.driftPoints = driftPoints;
    this.trueSizePoints = workedPoints + leftPoints;
    this.outOfSprint = outOfSprint(changes);
    const lastOut = this.outOfSprint.at(-1);
    this.droppedOn = lastOut?.until === undefined ? lastOut?.from : undefined;
    // A card estimated at 0 points is not finished before somebody says so.
    const saidDone = inForce.length > 0 && leftPoints === 0;
    this.finished =
      saidDone && this.droppedOn === undefined && !(changes !== undefined && isReopened(changes, inForce));
    this.finishedOn = this.finished ? (inForce.at(-1) as AnswerFact).day : undefined;
    this.inForce = inForce;
    this.changes = changes;
  }

  get entries(): readonly LedgerEntry[] {
    return entriesOf(this.card, this.inForce);
  }

  get blocks(): readonly Block[] {
    return this.changes === undefined ? [] : blocksOf(this.inForce, this.changes, this.finishedOn);
  }
}

/** Folds the facts about one card; facts about other cards must not be among them. */
export function cardState(card: Card, facts: readonly CardFact[]): CardState {
  const record: CardRecord = { card, inForce: [], changes: undefined };
  for (const fact of inOrder(facts)) takeFact(record, fact);
  return new FoldedCard(record);
}

/** Folds a sprint's facts card by card, in the order of the cards. */
export function ledgerOf(cards: readonly Card[], facts: readonly CardFact[]): CardState[] {
  const records = cards.map((card): CardRecord => ({ card, inForce: [], changes: undefined }));
  const places = new CardPlaces(cards);
  for (const fact of inOrder(facts)) {
    const place = places.placeOf(fact.cardId);
    if (place !== undefined) takeFact(records[place] as CardRecord, fact);
  }
  return records.map((record) => new FoldedCard(record));
}

/**
 * Finds which of a sprint's cards a fact is about. Decides nothing about the fact.
 *
 * People answer in the order of the cards, so a fact's card is mostly the one after, or the same as, the one asked for
 * before. Looking there first takes a quarter off the time of ratios from many answers.
 */
export class CardPlaces {
  private readonly cards: readonly Card[];
  private last = 0;
  private byId: Map<string, number> | undefined = undefined;

  constructor(cards: readonly Card[]) {
    this.cards = cards;
  }

  /** The card's place in the list; undefined when it is not in it. */
  placeOf(cardId: string): number | undefined {
    const next = this.last + 1 < this.cards.length ? this.last + 1 : 0;
    let place: number | undefined = next;
    if (this.cards[next]?.id !== cardId) {
      place = this.cards[this.last]?.id === cardId ? this.last : this.lookedUp(cardId);
    }
    this.last = place ?? this.last;
    return place;
  }

  private lookedUp(cardId: string): number | undefined {
    this.byId ??= new Map(this.cards.map(({ id }, place) => [id, place]));
    return this.byId.get(cardId);
  }
}
