/** Cards in the store, and what was said of them. */
import type { NewFact, RecordedFact, SprintCard, SprintRecords } from '../team/team.ts';

export interface CardReading {
  recordsOf(sprintId: string): Promise<SprintRecords>;
  /** The records of many sprints in as few statements as of one. */
  recordsOfMany(sprintIds: readonly string[]): Promise<Map<string, SprintRecords>>;
}

export interface CardWriting {
  insert(cards: readonly SprintCard[]): Promise<void>;
  addOwner(cardId: string, userId: string): Promise<void>;
  /** Takes the person off these cards. */
  removeOwner(cardIds: readonly string[], userId: string): Promise<void>;
  /** Gives the facts back with their places in the order. */
  insertFacts(facts: readonly NewFact[]): Promise<RecordedFact[]>;
}
