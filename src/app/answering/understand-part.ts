/** Understands what an answer in words says about one card, or about several of which it says the same. */
import { MAX_POINTS, parsePoints } from '../../sprint/points.ts';
import { withoutEnds } from '../cards/card-link.ts';
import type { AnswerVocabulary } from './answer-vocabulary.ts';

/** What was said about the card at a place in the prompt's list, 1 for the first. */
export interface WordsForCard {
  readonly position: number;
  /** Undefined: only that the card is blocked was said. */
  readonly leftPoints: number | 'unchanged' | undefined;
  readonly workedPoints: number | undefined;
  readonly surprisePoints: number | undefined;
  /** On what the card is blocked. */
  readonly blockedOn?: string;
  readonly note?: string;
}

/** The cards that may be meant. */
export interface CardsToAnswer {
  /** How many the prompt listed. */
  readonly count: number;
  /** Places of those that are still open. */
  readonly open: readonly number[];
  /** Finds a card's place by its number or short name; undefined when there is none. */
  readonly positionOf: (reference: string) => number | undefined;
}

export type Unclear =
  | { readonly code: 'comma-two-ways'; readonly typed: string; readonly half: string; readonly two: string }
  | { readonly code: 'space-two-ways'; readonly typed: string; readonly card: string; readonly left: string }
  | { readonly code: 'number-two-ways'; readonly typed: string; readonly place: string }
  | { readonly code: 'done-two-ways'; readonly typed: string }
  | { readonly code: 'nothing-two-ways'; readonly typed: string }
  | { readonly code: 'blocked-two-ways'; readonly typed: string }
  | { readonly code: 'which-done' | 'which-blocked' | 'blocked-on-what' }
  | { readonly code: 'not-an-answer'; readonly typed: string }
  /** One of the person's cards is named. */
  | { readonly code: 'no-amount'; readonly typed: string; readonly position: number }
  | { readonly code: 'not-halves'; readonly typed: string }
  | { readonly code: 'too-many-points'; readonly typed: string; readonly most: number }
  | { readonly code: 'not-points'; readonly typed: string; readonly position?: number }
  | { readonly code: 'no-such-card'; readonly typed: string }
  | { readonly code: 'said-twice'; readonly typed: string; readonly what: 'worked' | 'surprise' }
  | { readonly code: 'answered-twice'; readonly card: string }
  | { readonly code: 'wrong-count'; readonly cards: number; readonly numbers: number };

/** An answer, and what about its wording counts when it is held against the others. */
export interface Said extends WordsForCard {
  /** By what its card was called; undefined when it is meant by its place. */
  readonly called: string | undefined;
  /** What is left as it was typed, a number or a word such as `done`. */
  readonly typed: string;
}

export interface PartOfAnswer {
  readonly text: string;
  /** 1 for the first part of the message. */
  readonly place: number;
  /** Whether the message has no other parts. */
  readonly isAlone: boolean;
  /** Whether it is also said that the card is blocked, which needs no number. */
  readonly isBlocked?: boolean;
}

/** No card is estimated at more, as a rule. */
const USUAL_POINTS_MAX = 20;

type Kind = keyof AnswerVocabulary;

const NUMBER = /^\d+(?:[.,]\d+)?$/;
const SIGN = /^(?:[:=→]|[-=]>)$/;
/** `2) ` and `(2) ` before what is said of a card. */
const LIST_NUMBER = /(?<=^|\s)\(?(\d{1,4})\)(?=\s)/g;
/** A tick, as it is or as the platform writes it out. */
const TICK = /:(?:white_check_mark|heavy_check_mark|ballot_box_with_check):|[✔☑✅]\uFE0F?/gu;
/** Other signs, likewise (`:tada:`), and smileys of letters. */
const EMOJI =
  /:[a-z][a-z0-9_+-]{1,40}:|(?:(?!✅)\p{Extended_Pictographic}|[\u{1F3FB}-\u{1F3FF}]|\u200D|\uFE0F)+|(?<=\s)[:;]-?[()D](?=\s|$)/giu;
/** Before a number that is no more than about right. */
const ABOUT = /[~∼≈](?=\s?[\d½])/g;
/** Between a card and what is said of it, or between what was and what is left, with or without spaces around it. */
const SIGNS = /->|=>|[→=:]/g;
const FULL_STOPS = new Set('.!');
/** Words of the longest phrase that says that nothing changed. */
const UNCHANGED_WORDS_MAX = 4;

/** In small letters, with one kind of apostrophe, and without full stops at the end. */
export function plainly(text: string): string {
  return wordsOf(text).join(' ').toLowerCase().replaceAll("'", '’');
}

export function wordsOf(text: string): string[] {
  const plain = text
    .replace(TICK, ' ✅ ')
    .replace(EMOJI, ' ')
    .replace(ABOUT, '')
    .replace(LIST_NUMBER, '$1 :')
    .trim();
  return withoutEnds(plain, FULL_STOPS, 'end').replace(SIGNS, ' $& ').trim().split(/\s+/);
}

const SIGNED_NUMBER = /^[-−]?\d/;

/** The words, with `surprise 2` in place of `2 surprise` at their end, and likewise for what was worked. */
export function extraInOrder(words: readonly string[], vocabulary: AnswerVocabulary): readonly string[] {
  const last = words.at(-1) ?? '';
  const numberAt = vocabulary.points.includes(plainly(words.at(-2) ?? '')) ? -3 : -2;
  const isExtra = [...vocabulary.worked, ...vocabulary.surprise].includes(plainly(last));
  if (!isExtra || !SIGNED_NUMBER.test(words.at(numberAt) ?? '')) return words;
  return [...words.slice(0, numberAt), last, words.at(numberAt) as string];
}

export function understandPart(
  { text, place, isAlone, isBlocked = false }: PartOfAnswer,
  cards: CardsToAnswer,
  vocabulary: AnswerVocabulary,
): readonly Said[] | Unclear {
  const is = (word: string | undefined, kind: Kind): boolean =>
    word !== undefined && vocabulary[kind].includes(plainly(word));
  const isCard = (word: string): boolean => cards.positionOf(word) !== undefined;
  const notAnAnswer: Unclear = { code: 'not-an-answer', typed: text };

  const words = extraInOrder(withoutTick(wordsOf(text), is), vocabulary);
  const extrasAt = words.findIndex((word) => is(word, 'worked') || is(word, 'surprise'));
  const extras = readExtras(text, extrasAt < 0 ? [] : words.slice(extrasAt), is);
  if ('code' in extras) return extras;
  const head = withoutLeft(extrasAt < 0 ? words : words.slice(0, extrasAt), vocabulary);
  const unchanged = namesOfUnchanged(head.words, vocabulary, is);
  const meant = head.words.filter((word) => isCard(word) || !(is(word, 'filler') || is(word, 'guess')));
  // `grew 3`, `1 down`: only by how much it changed is said.
  const isChange = meant.some((word) => is(word, 'change')) && !meant.some((word) => is(word, 'to'));
  if (isChange) return notAnAnswer;
  const telling = withoutChange(withoutFormer(cardFirst(meant, vocabulary, is), cards, is), is);
  const { names, amounts } = unchanged ?? namesAndAmounts(telling, is);
  if (isBlocked) {
    const blocked = blockedAlone({ names, amounts: unchanged ? [] : amounts }, isAlone, cards, is);
    if (blocked) return blocked;
  }
  const amount = amounts[0];
  if (amount === undefined || amounts.length > 1) return notAnAnswer;

  const isNothing = is(amount, 'nothing');
  if (isNothing && names.length === 0 && !head.saysLeft) return { code: 'nothing-two-ways', typed: text };
  const isDone = isNothing || is(amount, 'done');
  if (isDone && head.words.some((word) => is(word, 'guess') && !isCard(word))) return notAnAnswer;
  const leftPoints = unchanged ? 'unchanged' : isDone ? 0 : parsePoints(amount);
  if (leftPoints === undefined) return whyNotPoints(amount) ?? notAnAnswer;
  // `41, 42` names two cards.
  if (leftPoints !== 0 && callsCard(amount, cards)) return notAnAnswer;
  const said = (position: number, called?: string): Said => ({
    ...{ position, leftPoints, called, typed: amount },
    ...{ workedPoints: extras.worked, surprisePoints: extras.surprise },
  });

  const isMarked = is(names[0], 'card');
  const called = isMarked ? names.slice(1) : names;
  if (called.length === 0) {
    if (isMarked) return notAnAnswer;
    if (!isDone || !isAlone || cards.count <= 1) return [said(place)];
    const [only, ...others] = cards.open;
    return only !== undefined && others.length === 0 ? [said(only, String(only))] : { code: 'which-done' };
  }
  const references = referencesIn(called, is);
  if (!references) return notAnAnswer;
  const mayBePoints = !isMarked && isNumber(references[0] ?? '') && !callsCard(references[0] ?? '', cards);
  if (isDone && mayBePoints && cards.count === 1) return { code: 'done-two-ways', typed: text };
  const unknown = references.find((reference) => !isCard(reference));
  if (unknown !== undefined) return { code: 'no-such-card', typed: unknown };
  return references.map((reference) => said(cards.positionOf(reference) ?? 0, reference));
}

/** What is said only to be blocked: `2:`, `card 2`, `berth-7`, `1 and 2`, or nothing at all. Undefined: a number is said too. */
function blockedAlone(
  { names, amounts }: { readonly names: readonly string[]; readonly amounts: readonly string[] },
  isAlone: boolean,
  cards: CardsToAnswer,
  is: (word: string | undefined, kind: Kind) => boolean,
): readonly Said[] | Unclear | undefined {
  const words = [...names, ...amounts].filter((word) => word !== '');
  const isMarked = is(words[0], 'card');
  const called = isMarked ? words.slice(1) : words;
  const said = (position: number, name: string): Said => ({
    ...{ position, called: name, typed: name },
    ...{ leftPoints: undefined, workedPoints: undefined, surprisePoints: undefined },
  });
  if (called.length === 0) {
    const [only, ...others] = cards.open;
    return only !== undefined && others.length === 0 ? [said(only, String(only))] : { code: 'which-blocked' };
  }
  const references = referencesIn(called, is);
  if (!references) return undefined;
  const first = called[0] as string;
  const isNumber = called.length === 1 && (parsePoints(first) !== undefined || is(first, 'done'));
  if (isNumber && amounts.length > 0 && !isMarked) {
    const position = isAlone ? cards.positionOf(first) : undefined;
    // A number that is no place in the list, such as that of a key, is hardly what is left.
    const isKey = cards.count > 1 ? Number(first) > cards.count : callsCard(first, cards);
    if (position !== undefined && isKey) return [said(position, first)];
    if (cards.count === 1) return undefined;
    return position === undefined ? undefined : { code: 'blocked-two-ways', typed: first };
  }
  const unknown = references.find((reference) => cards.positionOf(reference) === undefined);
  if (unknown !== undefined) return { code: 'no-such-card', typed: unknown };
  return references.map((reference) => said(cards.positionOf(reference) ?? 0, reference));
}

/** One card, or several with a word such as `and` between them; undefined: something else. */
function referencesIn(
  called: readonly string[],
  is: (word: string | undefined, kind: Kind) => boolean,
): readonly string[] | undefined {
  const isList = called.length % 2 === 1 && called.every((word, i) => is(word, 'and') === (i % 2 === 1));
  return isList ? called.filter((_, i) => i % 2 === 0) : undefined;
}

/** `berth-7 : 3` in place of `3 left for berth-7`. */
function cardFirst(
  words: readonly string[],
  vocabulary: AnswerVocabulary,
  is: (word: string | undefined, kind: Kind) => boolean,
): readonly string[] {
  const at = words.findIndex((word) => is(word, 'about'));
  const [amount = '', ...more] = withoutLeft(words.slice(0, Math.max(at, 0)), vocabulary).words;
  const cards = words.slice(at + 1);
  const isAmount = parsePoints(amount) !== undefined && more.length === 0;
  if (!isAmount) return words;
  return cards.length === 0 ? [amount] : [...cards, ':', amount];
}

/** `berth-7 8` in place of `berth-7 grew to 8`. */
function withoutChange(
  words: readonly string[],
  is: (word: string | undefined, kind: Kind) => boolean,
): readonly string[] {
  const isAfterNumber = (at: number): boolean => parsePoints(words[at - 1] ?? '') !== undefined;
  return words.filter(
    (word, i) => !is(word, 'change') && !(is(word, 'to') && !SIGN.test(word) && !isAfterNumber(i)),
  );
}

/** What cards are called by of which is said that nothing changed: `berth-7 same`, `no change on berth-7`, or `same` alone. */
function namesOfUnchanged(
  words: readonly string[],
  vocabulary: AnswerVocabulary,
  is: (word: string | undefined, kind: Kind) => boolean,
): { readonly names: readonly string[]; readonly amounts: readonly string[] } | undefined {
  const isPhrase = (some: readonly string[]): boolean =>
    vocabulary.unchanged.includes(plainly(some.join(' ')));
  const lengths = Array.from({ length: Math.min(words.length, UNCHANGED_WORDS_MAX) }, (_, i) => i + 1);
  const after = lengths.findLast((length) => isPhrase(words.slice(-length)));
  const before = lengths.findLast((length) => isPhrase(words.slice(0, length)));
  const length = after ?? before;
  if (length === undefined) return undefined;
  const [phrase, others] =
    after === undefined
      ? [words.slice(0, length), words.slice(length)]
      : [words.slice(-length), words.slice(0, -length)];
  const names = others.filter((word) => !parts(word, is) && !is(word, 'filler') && !is(word, 'about'));
  return { names, amounts: [phrase.join(' ')] };
}

/** Without a tick beside `done`. */
function withoutTick(
  words: readonly string[],
  is: (word: string | undefined, kind: Kind) => boolean,
): readonly string[] {
  const others = words.filter((word) => word !== '✅');
  return others.some((word) => is(word, 'done')) ? others : words;
}

/** Without what was left until now: `berth-7 3` in place of `berth-7 from 5 to 3` and of `berth-7 5 -> 3`. */
function withoutFormer(
  words: readonly string[],
  cards: CardsToAnswer,
  is: (word: string | undefined, kind: Kind) => boolean,
): readonly string[] {
  const at = words.findIndex((word) => is(word, 'to'));
  const isNumber = (word: string | undefined) => word !== undefined && parsePoints(word) !== undefined;
  if (!isNumber(words[at - 1]) || !isNumber(words[at + 1])) return words;
  const isSaid = is(words[at - 2], 'from');
  // `5 -> 3` is about card 5 where there is one, and `card 5 -> 3` in any case. `2 to 3` may be anything.
  const isAlone = at < 2 || is(words[at - 2], 'change');
  const isCard = isAlone ? cards.positionOf(words[at - 1] ?? '') !== undefined : is(words[at - 2], 'card');
  if (!isSaid && (isCard || (isAlone && !SIGN.test(words[at] ?? '')))) return words;
  return [...words.slice(0, at - (isSaid ? 2 : 1)), ...words.slice(at + 1)];
}

/** Whether the word is what a card is called by and nothing else: a number is one only where it can't be points. */
export function callsCard(word: string, { positionOf, count }: CardsToAnswer): boolean {
  return (
    positionOf(word) !== undefined && (!isNumber(word) || Number(word) > Math.max(count, USUAL_POINTS_MAX))
  );
}

/** Whether the word stands between a card and what is said about it. */
function parts(word: string, is: (word: string | undefined, kind: Kind) => boolean): boolean {
  return SIGN.test(word) || is(word, 'has');
}

/** What cards are called by, and what is said about them: `2: 3`, `2 has 3`, `berth-7 3`, `done with 2`, `3`. */
function namesAndAmounts(
  words: readonly string[],
  is: (word: string | undefined, kind: Kind) => boolean,
): { readonly names: readonly string[]; readonly amounts: readonly string[] } {
  const parting = (word: string): boolean => parts(word, is);
  const first = words.findIndex((word) => !parting(word));
  const told = words.slice(first < 0 ? words.length : first);
  if (told.length > 1 && is(told[0], 'done')) {
    return { names: told.slice(1).filter((word) => !parting(word)), amounts: told.slice(0, 1) };
  }
  const partedAt = told.findIndex(parting);
  const amountsAt = partedAt < 0 ? told.length - 1 : partedAt;
  return {
    names: told.slice(0, Math.max(amountsAt, 0)),
    amounts: told.slice(Math.max(amountsAt, 0)).filter((word) => !parting(word)),
  };
}

/** Takes `points`, `left`, `to go` and the like off the end. */
function withoutLeft(
  words: readonly string[],
  vocabulary: AnswerVocabulary,
): { readonly words: readonly string[]; readonly saysLeft: boolean } {
  let [count, saysLeft] = [words.length, false];
  for (;;) {
    const endsWith = (length: number, phrases: readonly string[]): boolean =>
      count > length && phrases.includes(plainly(words.slice(count - length, count).join(' ')));
    const leftWords = [2, 1].find((length) => endsWith(length, vocabulary.left));
    if (leftWords === undefined && !endsWith(1, vocabulary.points)) break;
    saysLeft ||= leftWords !== undefined;
    count -= leftWords ?? 1;
  }
  return { words: words.slice(0, count), saysLeft };
}

interface Extras {
  readonly worked?: number;
  readonly surprise?: number;
}

/** `worked 1 surprise 2`, in any order. */
function readExtras(
  text: string,
  words: readonly string[],
  is: (word: string | undefined, kind: Kind) => boolean,
): Extras | Unclear {
  const extras: { worked?: number; surprise?: number } = {};
  const telling = words.filter((word) => !is(word, 'points') && !is(word, 'and'));
  for (let i = 0; i < telling.length; i += 2) {
    const [word, amount = ''] = telling.slice(i, i + 2);
    const what = (['worked', 'surprise'] as const).find((kind) => is(word, kind));
    if (what === undefined || amount === '') return { code: 'not-an-answer', typed: text };
    if (extras[what] !== undefined) return { code: 'said-twice', typed: text, what };
    const isMinus = /^[-−]/.test(amount);
    const size = isMinus ? amount.slice(1) : amount;
    const points = parsePoints(size);
    if (points === undefined) return whyNotPoints(size) ?? { code: 'not-points', typed: amount };
    extras[what] = isMinus ? 0 - points : points;
  }
  return extras;
}

/** Why a number is none of points; undefined for what is no number at all. */
function whyNotPoints(typed: string): Unclear | undefined {
  if (SIGNED_NUMBER.test(typed) && !NUMBER.test(typed)) return { code: 'not-points', typed };
  if (!NUMBER.test(typed)) return undefined;
  const isTooMany = Number(typed.replace(',', '.')) > MAX_POINTS;
  return isTooMany ? { code: 'too-many-points', typed, most: MAX_POINTS } : { code: 'not-halves', typed };
}

export function isNumber(typed: string): boolean {
  return parsePoints(typed) !== undefined;
}
