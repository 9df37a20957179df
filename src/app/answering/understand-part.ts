/** Understands what an answer in words says about one card, or about several of which it says the same. */
import { MAX_POINTS, parsePoints } from '../../sprint/points.ts';
import { type AnswerVocabulary, isWordOfAnswers } from './answer-vocabulary.ts';
import {
  cardFirst,
  extraInOrder,
  type Kind,
  namesAndAmounts,
  namesOfUnchanged,
  SIGN,
  withoutChange,
  withoutFormer,
  withoutLeft,
  withoutTick,
  withoutWas,
} from './put-in-order.ts';
import { isNumber, plainly, SIGNED_NUMBER, wordsOf } from './typed-words.ts';

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
  /** Finds a card's place by its number, short name, or words of its title; undefined when there is none. */
  readonly positionOf: (reference: string) => number | undefined;
  /** Whether an earlier day is spoken about, so that what was left is said of it. */
  readonly isEarlier?: boolean;
}

export type Unclear =
  | { readonly code: 'comma-two-ways'; readonly typed: string; readonly half: string; readonly two: string }
  | { readonly code: 'space-two-ways'; readonly typed: string; readonly card: string; readonly left: string }
  | { readonly code: 'number-two-ways'; readonly typed: string; readonly place: string }
  | { readonly code: 'done-two-ways'; readonly typed: string }
  | { readonly code: 'nothing-two-ways'; readonly typed: string }
  | { readonly code: 'blocked-two-ways'; readonly typed: string }
  | { readonly code: 'which-done' | 'which-blocked' | 'blocked-on-what' }
  | { readonly code: 'not-an-answer'; readonly typed: string; readonly position?: number }
  /** One of the person's cards is named. */
  | { readonly code: 'no-amount'; readonly typed: string; readonly position: number }
  | { readonly code: 'not-halves'; readonly typed: string }
  | { readonly code: 'too-many-points'; readonly typed: string; readonly most: number }
  | { readonly code: 'not-points'; readonly typed: string; readonly position?: number }
  | { readonly code: 'no-such-card'; readonly typed: string }
  /** Of several cards at once it is said what was worked or was surprise. */
  | { readonly code: 'extra-of-several'; readonly typed: string }
  /** Without a card, after one that is named. */
  | { readonly code: 'number-of-which'; readonly typed: string; readonly place: string }
  | { readonly code: 'done-or-worked'; readonly typed: string }
  | { readonly code: 'said-twice'; readonly typed: string; readonly what: 'worked' | 'surprise' }
  | { readonly code: 'answered-twice'; readonly card: string }
  | { readonly code: 'wrong-count'; readonly cards: number; readonly numbers: number };

/** An answer, and what about its wording counts when it is held against the others. */
export interface Said extends WordsForCard {
  /** By what its card was called; undefined when it is meant by its place. */
  readonly called: string | undefined;
  /** What is left as it was typed, a number or a word such as `done`. */
  readonly typed: string;
  /** Whether what the card is called by may be points. */
  readonly mayBePoints: boolean;
}

export interface PartOfAnswer {
  readonly text: string;
  /** 1 for the first part of the message. */
  readonly place: number;
  /** Whether the message has no other parts. */
  readonly isAlone: boolean;
  /** Places of the cards of which other parts before it speak. */
  readonly taken?: readonly number[];
  /** Whether it is also said that the card is blocked, which needs no number. */
  readonly isBlocked?: boolean;
}

/** No card is estimated at more, as a rule. */
const USUAL_POINTS_MAX = 20;

const NUMBER = /^\d+(?:[.,]\d+)?$/;

export function understandPart(
  { text, place, isAlone, taken = [], isBlocked = false }: PartOfAnswer,
  cards: CardsToAnswer,
  vocabulary: AnswerVocabulary,
): readonly Said[] | Unclear {
  const is = (word: string | undefined, kind: Kind): boolean =>
    word !== undefined && vocabulary[kind].includes(plainly(word));
  const isCard = (word: string): boolean => cards.positionOf(word) !== undefined;
  const notAnAnswer: Unclear = { code: 'not-an-answer', typed: text };

  const typed = extraInOrder(withoutTick(wordsOf(text), is), vocabulary);
  const extrasAt = typed.findIndex((word) => is(word, 'worked') || is(word, 'surprise'));
  const extras = readExtras(text, extrasAt < 0 ? [] : typed.slice(extrasAt), is);
  if ('code' in extras) return extras;
  const telling = extrasAt < 0 ? typed : typed.slice(0, extrasAt);
  const isAmount = (word: string): boolean => isNumber(word) && !callsCard(word, cards);
  const isOfToday = (word: string): boolean => is(word, 'today') && !cards.isEarlier;
  const unchanged = namesOfUnchanged(withoutLeft(telling, vocabulary).words, vocabulary, isAmount, is);
  // `my 2 are done` is not about card 2.
  const isCount = (word: string, next = ''): boolean =>
    is(word, 'the') && isNumber(next) && !callsCard(next, cards);
  const told = telling.filter(
    (word, i) =>
      isCard(word) ||
      isCount(word, telling[i + 1]) ||
      !(is(word, 'filler') || is(word, 'guess') || isOfToday(word)),
  );
  const { words, saysLeft } = withoutLeft(told, vocabulary);
  const meant = withoutWas(words, is);
  if (saysSomethingElse(meant, cards, is)) return notAnAnswer;
  const inOrder = withoutChange(withoutFormer(cardFirst(meant, vocabulary, is), isCard, is), isAmount, is);
  const { names, amounts } = unchanged ?? namesAndAmounts(inOrder, is);
  if (isBlocked) {
    const blocked = blockedAlone({ names, amounts: unchanged ? [] : amounts }, isAlone, cards, is);
    if (blocked) return blocked;
  }
  const amount = amounts[0];
  if (amount === undefined || amounts.length > 1) return notAnAnswer;

  const isNothing = is(amount, 'nothing');
  if (isNothing && names.length === 0 && !saysLeft) return { code: 'nothing-two-ways', typed: text };
  const isDone = isNothing || is(amount, 'done');
  if (isDone && telling.some((word) => is(word, 'guess') && !isCard(word))) return notAnAnswer;
  // `done 3 left` and `done 3` may be points.
  const isWork = is(amount, 'done') && !unchanged && names.some(isAmount);
  if (isWork && words.length < told.length) return notAnAnswer;
  if (isWork && cards.count > 1 && is(inOrder.at(-2), 'done') && names.length === 1)
    return { code: 'done-or-worked', typed: names[0] ?? '' };
  const leftPoints = unchanged ? 'unchanged' : isDone ? 0 : parsePoints(amount);
  if (leftPoints === undefined) return whyNotPoints(amount) ?? notAnAnswer;
  // `41, 42` names two cards.
  if (leftPoints !== 0 && callsCard(amount, cards)) return notAnAnswer;
  const said = (position: number, called?: string, mayBePoints = false): Said => ({
    ...{ position, leftPoints, called, typed: amount, mayBePoints },
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
  const references = referencesIn(called, cards, is, taken);
  if (!references) return notAnAnswer;
  const [first] = references;
  const mayBePoints = !isMarked && isNumber(first?.name ?? '') && !callsCard(first?.name ?? '', cards);
  if (isDone && mayBePoints && cards.count === 1) return { code: 'done-two-ways', typed: text };
  const unknown = references.find(({ positions }) => positions.length === 0);
  // A word of answers such as `both` calls no card, where there aren't two.
  if (unknown?.name.split(' ').every(isWordOfAnswers)) return notAnAnswer;
  if (unknown !== undefined) return { code: 'no-such-card', typed: unknown.name };
  const all = references.flatMap(({ name, positions }) =>
    positions.map((position) => said(position, name, mayBePoints)),
  );
  // `all 3` may be about three cards.
  const mayBeCount = inOrder.some((word, i) => is(word, 'every') && inOrder[i + 1] === amount);
  if (mayBeCount && cards.count > 1 && Number(amount) === all.length) return notAnAnswer;
  if (all.length > 1 && extrasAt >= 0) return { code: 'extra-of-several', typed: text };
  return all;
}

/**
 * Whether it isn't said how much is left: only by how much it changed (`grew 3`), how much it is at most (`up to 3`), or,
 * today, how much it was.
 */
function saysSomethingElse(
  words: readonly string[],
  { isEarlier = false }: CardsToAnswer,
  is: (word: string | undefined, kind: Kind) => boolean,
): boolean {
  const isChange = words.some((word) => is(word, 'change')) && !words.some((word) => is(word, 'to'));
  const isAtMost = words.some(
    (word, i) => is(`${word} ${words[i + 1]}`, 'atMost') && !is(words[i - 1], 'change'),
  );
  const wasSo = words.some((word, i) => is(word, 'was') && isNumber(words[i + 1] ?? ''));
  return isChange || isAtMost || (wasSo && !isEarlier);
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
    ...{ position, called: name, typed: name, mayBePoints: false },
    ...{ leftPoints: undefined, workedPoints: undefined, surprisePoints: undefined },
  });
  if (called.length === 0) {
    const [only, ...others] = cards.open;
    return only !== undefined && others.length === 0 ? [said(only, String(only))] : { code: 'which-blocked' };
  }
  const references = referencesIn(called, cards, is);
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
  const unknown = references.find(({ positions }) => positions.length === 0);
  if (unknown !== undefined) return { code: 'no-such-card', typed: unknown.name };
  return references.flatMap(({ name, positions }) => positions.map((position) => said(position, name)));
}

/** What cards are called by, and the places of those that are: of `both` two, of an unknown name none. */
interface Reference {
  readonly name: string;
  readonly positions: readonly number[];
}

/** One card, several with a word such as `and` between them, or all; undefined: something else. */
function referencesIn(
  called: readonly string[],
  { positionOf, open, count }: CardsToAnswer,
  is: (word: string | undefined, kind: Kind) => boolean,
  taken: readonly number[] = [],
): readonly Reference[] | undefined {
  const places = open.length > 0 ? open : Array.from({ length: count }, (_, i) => i + 1);
  const positionsOf = (words: readonly string[]): readonly number[] => {
    const position = positionOf(words.join(' '));
    if (position !== undefined) return [position];
    const others = taken.length > 0 ? places.filter((one) => !taken.includes(one)) : [];
    if (is(words.join(' '), 'rest') || (is(words.join(' '), 'other') && others.length === 1)) return others;
    const isCounted = words.length > 1 && words.at(-1) === String(places.length);
    const every = (isCounted ? words.slice(0, -1) : words).join(' ');
    return is(every, 'every') || (is(every, 'both') && places.length === 2) ? places : [];
  };
  const groups: string[][] = [[]];
  for (const word of called) {
    if (is(word, 'and')) groups.push([]);
    else groups.at(-1)?.push(word);
  }
  const references = groups.map((words) => ({ name: words.join(' '), positions: positionsOf(words) }));
  const isClear = groups.every(
    (words, i) => words.length === 1 || (words.length > 1 && references[i]?.positions.length !== 0),
  );
  return isClear ? references : undefined;
}

/** Whether the word is what a card is called by and nothing else: a number is one only where it can't be points. */
export function callsCard(word: string, { positionOf, count }: CardsToAnswer): boolean {
  return (
    positionOf(word) !== undefined && (!isNumber(word) || Number(word) > Math.max(count, USUAL_POINTS_MAX))
  );
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
  const telling = words.filter(
    (word) => !SIGN.test(word) && !(['points', 'and', 'guess'] as const).some((kind) => is(word, kind)),
  );
  for (let i = 0; i < telling.length; i += 2) {
    const [word, amount = ''] = telling.slice(i, i + 2);
    const what = (['worked', 'surprise'] as const).find((kind) => is(word, kind));
    const isWhere = is(amount, 'with') || is(amount, 'about');
    if (what === undefined || amount === '' || isWhere) return { code: 'not-an-answer', typed: text };
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
