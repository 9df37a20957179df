/** What is stored under one person's id, by kind. Types and their order only; the store reads it, people get a copy. */

/** In the order in which a person reads of them. */
export const PERSONAL_KINDS = [
  'memberships',
  'productOwnerOf',
  'answers',
  'prompts',
  'cardsOwned',
  'cardsAdded',
  'cardChanges',
  'planChanges',
  'goalsJudged',
  'experimentsBegun',
  'experimentsEnded',
  'drafts',
  'recordedValues',
  'messagesToYou',
  'postsByYou',
  'visits',
  'installations',
] as const;

export type PersonalKind = (typeof PERSONAL_KINDS)[number];

/** One record: its team (none for a visit or an installation), when it is from, and what else it holds. */
export interface PersonalRecord {
  readonly team: string | null;
  /** ISO day, or ISO instant in UTC; null where none is kept. */
  readonly on: string | null;
  readonly [detail: string]: unknown;
}

/** How much is stored of one kind. */
export interface PersonalSum {
  readonly kind: PersonalKind;
  /** 1 or more. */
  readonly count: number;
  /** ISO days; undefined where the kind has none. */
  readonly from: string | undefined;
  readonly to: string | undefined;
  readonly teamNames: readonly string[];
}

export function countOf(sums: readonly PersonalSum[]): number {
  return sums.reduce((all, { count }) => all + count, 0);
}
