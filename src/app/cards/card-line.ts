/** From the ledger to the card as messages show it. */
import { currentBlock } from '../../sprint/blocks.ts';
import type { Day } from '../../sprint/calendar.ts';
import { type CardState, ledgerOf } from '../../sprint/ledger.ts';
import { Refusal } from '../refusal.ts';
import type { RecordedFact, SprintCard, SprintRecords } from '../team/team.ts';

/** A card's standing together with its number in the sprint. */
export type SprintCardState = CardState & { readonly card: SprintCard };

/** Folds a sprint's records. */
export function statesOf(records: SprintRecords): SprintCardState[] {
  // The ledger hands back the very cards that it was given.
  return ledgerOf(records.cards, records.facts) as SprintCardState[];
}

/** A card as a message shows it. */
export interface CardLine {
  readonly cardId: string;
  readonly number: number;
  readonly key: string;
  readonly title: string;
  readonly link?: string | undefined;
  readonly estimatePoints: number;
  readonly workedPoints: number;
  readonly leftPoints: number;
  readonly surprisePoints: number;
  readonly driftPoints: number;
  readonly origin: 'planned' | 'pulled-in';
  readonly ownerIds: readonly string[];
  readonly state: 'open' | 'finished' | 'dropped';
  /** Undefined: the card isn't blocked. `on` is empty when the words were erased or are private. */
  readonly blocked?: { readonly since: Day; readonly on: string } | undefined;
}

export function cardLine(state: SprintCardState): CardLine {
  const { card } = state;
  const block = currentBlock(state);
  return {
    cardId: card.id,
    number: card.number,
    key: card.key,
    title: card.title,
    link: card.link,
    estimatePoints: card.estimatePoints,
    workedPoints: state.workedPoints,
    leftPoints: state.leftPoints,
    surprisePoints: state.surprisePoints,
    driftPoints: state.driftPoints,
    origin: card.origin,
    ownerIds: card.ownerIds,
    state: state.droppedOn !== undefined ? 'dropped' : state.finished ? 'finished' : 'open',
    // The ledger hands back the very facts that it was given.
    blocked: block && {
      since: block.since,
      on: sharedNote((block.said as RecordedFact & { kind: 'blocked' }).note),
    },
  };
}

/** A note as others read it: one that begins with `private:` is shown to nobody but the person who wrote it. */
export function sharedNote(note: string): string {
  return /^\s*private\s*:/i.test(note) ? '' : note.trim();
}

/** Whether somebody still has to do something on the card. */
export function isOpenCard(state: CardState): boolean {
  return !state.finished && state.droppedOn === undefined;
}

/** Whether the card is open and nobody's. */
export function needsOwner(state: CardState): boolean {
  return isOpenCard(state) && state.card.ownerIds.length === 0;
}

/** How people call a card: its key, and its number when the key is another word. */
export function cardName(card: Pick<SprintCard, 'number' | 'key' | 'title'>): string {
  return card.key === String(card.number) ? `${card.number} (${card.title})` : `${card.key} (${card.title})`;
}

/** Whether the team gave the card a key, or Loadline called it by its number: `3`, or `#3` where that was taken. */
export function hasOwnKey({ key, number }: Pick<SprintCard, 'key' | 'number'>): boolean {
  return key !== String(number) && !/^#\d+$/.test(key);
}

/** The only card whose key ends in this number, by which people call it for short: `41` for `quay-41`. */
export function cardOfKeyNumber<T extends Pick<SprintCard, 'key'>>(
  cards: readonly T[],
  number: string,
): T | undefined {
  if (!/^\d+$/.test(number)) return undefined;
  const [only, ...others] = cards.filter(({ key }) => key.endsWith(`-${number}`));
  return others.length === 0 ? only : undefined;
}

/** Looks like a card's own short name, `berth-7`. */
const SHORT_NAME = /^\p{L}[\p{L}\d]*-\d+$/u;
/** The same without its dash. */
const WITHOUT_DASH = /^(\p{L}+) ?(\d+)$/u;

/**
 * The card with this key, upper or lower case and with its dash or without (`berth 7`), or the only one whose title begins
 * with the word: `berth-7 Fog horn` without a colon gives no key, but every list shows it like one.
 */
export function cardOfShortName<T extends Pick<SprintCard, 'key' | 'title'>>(
  cards: readonly T[],
  name: string,
): T | undefined {
  const typed = name.toLowerCase();
  const byName = cards.find(({ key }) => key.toLowerCase() === typed);
  const wanted = typed.replace(WITHOUT_DASH, '$1-$2');
  const byKey = byName ?? cards.find(({ key }) => key.toLowerCase() === wanted);
  if (byKey || !SHORT_NAME.test(wanted)) return byKey;
  const [only, ...others] = cards.filter(({ title }) => title.toLowerCase().split(' ', 1)[0] === wanted);
  return others.length === 0 ? only : undefined;
}

const SHORTEST_TITLE_WORD = 3;

/**
 * The only card in whose title these words stand, upper or lower case, by which people call it among a few: `calendar`,
 * `tide calendar`.
 */
export function cardOfTitleWords<T extends Pick<SprintCard, 'title'>>(
  cards: readonly T[],
  words: readonly string[],
): T | undefined {
  const wanted = words.map((word) => word.toLowerCase());
  const isTelling = wanted.some((word) => word.length >= SHORTEST_TITLE_WORD);
  if (!isTelling || !wanted.every((word) => /^\p{L}+$/u.test(word))) return undefined;
  const [only, ...others] = cards.filter(({ title }) => {
    const inTitle = title.toLowerCase().split(/[^\p{L}]+/u);
    return wanted.every((word) => inTitle.includes(word));
  });
  return others.length === 0 ? only : undefined;
}

/** Finds a card by its short name, by its number, or by the number in its key. */
export function findCard(states: readonly SprintCardState[], reference: string): SprintCardState {
  const wanted = reference
    .trim()
    .replace(/^(?:card )?#?/i, '')
    .toLowerCase();
  const cards = states.map(({ card }) => card);
  const called =
    cardOfShortName(cards, wanted) ??
    cards.find(({ number }) => String(number) === wanted) ??
    cardOfKeyNumber(cards, wanted);
  const found = states.find(({ card }) => card === called);
  if (found) return found;
  const known = states.map(({ card }) =>
    card.key === String(card.number) ? card.key : `${card.number} ${card.key}`,
  );
  throw new Refusal('no-such-card', { reference: reference.trim(), known });
}

/** By what a card is known again in another sprint: the team's own key, or the title where it has none. */
export function cardIdentity(card: Pick<SprintCard, 'key' | 'number' | 'title'>): string {
  const isByKey = hasOwnKey(card);
  const name = isByKey ? card.key : card.title.replaceAll(/\s+/g, ' ').trim();
  return `${isByKey ? 'key' : 'title'} ${name.toLowerCase()}`;
}
