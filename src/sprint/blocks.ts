/** When cards were blocked: from the day on which somebody says so until something ends it. */
import type { Day } from './calendar.ts';
import type { AnswerFact, BlockedFact, CardChangeFact } from './card.ts';

/** A time in which a card was blocked. */
export interface Block {
  readonly since: Day;
  /** The day on which it ended; undefined: the card is blocked. */
  readonly until: Day | undefined;
  /** What was said last: on what it is blocked. */
  readonly said: BlockedFact;
}

/**
 * The blocks of a card, in order. An answer, "moving again", and dropping or finishing the card end a block. An answer
 * about an earlier day doesn't: it says nothing about the block. When the card is said to be blocked on the day of the
 * answer that ended a block, the block goes on.
 *
 * @param inForce the answers about the card that count
 * @param finishedOn undefined while the card isn't finished
 */
export function blocksOf(
  inForce: readonly AnswerFact[],
  changes: readonly CardChangeFact[],
  finishedOn: Day | undefined,
): Block[] {
  if (!changes.some(({ kind }) => kind === 'blocked')) return [];
  const ended: Block[] = [];
  let current: Block | undefined;
  let isEndedByAnswer = false;
  for (const fact of [...inForce, ...changes].sort(byDay)) {
    if (fact.kind === 'blocked') {
      const goesOn = isEndedByAnswer && ended.at(-1)?.until === fact.day;
      const before = current ?? (goesOn ? ended.pop() : undefined);
      current = { since: before?.since ?? fact.day, until: undefined, said: fact };
    } else if (current && fact.kind !== 'reopen' && fact.kind !== 'undrop') {
      ended.push({ ...current, until: fact.day });
      current = undefined;
      isEndedByAnswer = fact.kind === 'answer';
    }
  }
  if (!current) return ended;
  if (finishedOn === undefined) return [...ended, current];
  return [...ended, { ...current, until: finishedOn < current.since ? current.since : finishedOn }];
}

function byDay(a: AnswerFact | CardChangeFact, b: AnswerFact | CardChangeFact): number {
  if (a.day === b.day) return a.order - b.order;
  return a.day < b.day ? -1 : 1;
}

/** Undefined: the card isn't blocked. */
export function currentBlock({ blocks }: { readonly blocks: readonly Block[] }): Block | undefined {
  const last = blocks.at(-1);
  return last?.until === undefined ? last : undefined;
}

/** Whether the card is blocked since the answer was given, so that the same answer once more would end the block. */
export function isBlockedSince(
  state: { readonly blocks: readonly Block[] },
  { day, order }: AnswerFact,
): boolean {
  const said = currentBlock(state)?.said;
  return said?.day === day && said.order > order;
}

/**
 * In how many pairs of card and day the card was blocked in the evening of the day. A card that moves again on a day was
 * not blocked that evening.
 */
export function blockedCardDays(
  states: readonly { readonly blocks: readonly Block[] }[],
  days: readonly Day[],
): number {
  let count = 0;
  for (const { blocks } of states) {
    for (const day of days) {
      if (blocks.some(({ since, until }) => since <= day && (until === undefined || day < until))) count += 1;
    }
  }
  return count;
}
