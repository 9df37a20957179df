/** The facts that a sprint is made of, as they were stated. Nothing here is derived. */
import type { Day } from './calendar.ts';

/** How a card came into the sprint: chosen at planning, or brought in afterwards. */
export type CardOrigin = 'planned' | 'pulled-in';

/** One item of the sprint's work. */
export interface Card {
  readonly id: string;
  /** The team's own short name for it, unique in the sprint, e.g. `berth-7`. */
  readonly key: string;
  readonly title: string;
  /** Points the team gave it when it entered the sprint; never edited afterwards. */
  readonly estimatePoints: number;
  readonly origin: CardOrigin;
  /** The day it entered: the sprint's first day for planned cards. */
  readonly enteredOn: Day;
  readonly ownerIds: readonly string[];
}

interface Fact {
  readonly cardId: string;
  /** The sprint's day that the fact is about. */
  readonly day: Day;
  /** Rises with every fact of the sprint in the order in which they were recorded. */
  readonly order: number;
  readonly memberId: string;
}

/** A member says what is left on a card. A later one by the same member for the same card and day corrects it. */
export interface AnswerFact extends Fact {
  readonly kind: 'answer';
  /** Points of work done on that day; undefined when the member gave only what is left. */
  readonly workedPoints: number | undefined;
  readonly leftPoints: number;
  /** How much of the growth was surprise work; negative when earlier surprise was not needed after all. */
  readonly surprisePoints: number;
}

/** The card is not finished although nothing was left on it. */
interface ReopenFact extends Fact {
  readonly kind: 'reopen';
}

/** The product owner took the card out of the sprint. */
interface DropFact extends Fact {
  readonly kind: 'drop';
}

/** The card was dropped by mistake, and is in the sprint again with what was left on it. */
interface UndropFact extends Fact {
  readonly kind: 'undrop';
}

/** The card is stuck, until it moves again or the next answer about it. */
export interface BlockedFact extends Fact {
  readonly kind: 'blocked';
}

/** The card is no longer blocked. */
interface MovingFact extends Fact {
  readonly kind: 'moving';
}

/** What is said about a card besides answers. */
export type CardChangeFact = ReopenFact | DropFact | UndropFact | BlockedFact | MovingFact;

export type CardFact = AnswerFact | CardChangeFact;
