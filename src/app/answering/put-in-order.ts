/** Puts what is said of a card in the order in which it is read: what it is called by, and then how much is left. */
import { parsePoints } from '../../sprint/points.ts';
import type { AnswerVocabulary } from './answer-vocabulary.ts';
import { plainly, SIGNED_NUMBER } from './typed-words.ts';

export type Kind = keyof AnswerVocabulary;

export const SIGN = /^(?:[:=→]|[-=]>)$/;
/** Words of the longest phrase that says that nothing changed. */
const UNCHANGED_WORDS_MAX = 4;

/** The words, with `surprise 2` in place of `2 surprise` at their end, and likewise for what was worked. */
export function extraInOrder(words: readonly string[], vocabulary: AnswerVocabulary): readonly string[] {
  const last = words.at(-1) ?? '';
  const numberAt = vocabulary.points.includes(plainly(words.at(-2) ?? '')) ? -3 : -2;
  const isExtra = [...vocabulary.worked, ...vocabulary.surprise].includes(plainly(last));
  if (!isExtra || !SIGNED_NUMBER.test(words.at(numberAt) ?? '')) return words;
  return [...words.slice(0, numberAt), last, words.at(numberAt) as string];
}

/** `berth-7 : 3` in place of `3 left for berth-7`. */
export function cardFirst(
  words: readonly string[],
  vocabulary: AnswerVocabulary,
  is: (word: string | undefined, kind: Kind) => boolean,
): readonly string[] {
  const about = words.findIndex((word) => is(word, 'about'));
  // `2 each`
  const isOfAll = about < 0 && (is(words.at(-1), 'every') || is(words.at(-1), 'both'));
  const at = isOfAll ? words.length - 1 : about;
  const { words: before, saysLeft } = withoutLeft(words.slice(0, Math.max(at, 0)), vocabulary);
  const [amount = '', ...more] = before;
  const cards = words.slice(isOfAll ? at : at + 1);
  const isAmount = parsePoints(amount) !== undefined || (is(amount, 'nothing') && saysLeft);
  if (!isAmount || more.length > 0) return words;
  return cards.length === 0 ? [amount] : [...cards, ':', amount];
}

/** `berth-7 8` in place of `berth-7 grew to 8`. */
export function withoutChange(
  words: readonly string[],
  isAmount: (word: string) => boolean,
  is: (word: string | undefined, kind: Kind) => boolean,
): readonly string[] {
  const isAfterNumber = (at: number): boolean => isAmount(words[at - 1] ?? '');
  return words.filter(
    (word, i) => !is(word, 'change') && !(is(word, 'to') && !SIGN.test(word) && !isAfterNumber(i)),
  );
}

/**
 * What cards are called by of which is said that nothing changed: `berth-7 same`, `no change on berth-7`, or `same` alone.
 * `same 3` and `3 as before` may be about card 3, or say that 3 are left.
 */
export function namesOfUnchanged(
  words: readonly string[],
  vocabulary: AnswerVocabulary,
  isAmount: (word: string) => boolean,
  is: (word: string | undefined, kind: Kind) => boolean,
): { readonly names: readonly string[]; readonly amounts: readonly string[] } | undefined {
  // In `both same`, both are a name.
  const isPhrase = (some: readonly string[]): boolean =>
    vocabulary.unchanged.includes(plainly(some.join(' '))) &&
    !some.some((word) => is(word, 'every') || is(word, 'both'));
  const lengths = Array.from({ length: Math.min(words.length, UNCHANGED_WORDS_MAX) }, (_, i) => i + 1);
  const after = lengths.findLast((length) => isPhrase(words.slice(-length)));
  const before = lengths.findLast((length) => isPhrase(words.slice(0, length)));
  const length = after ?? before;
  if (length === undefined) return undefined;
  const [phrase, others] =
    after === undefined
      ? [words.slice(0, length), words.slice(length)]
      : [words.slice(-length), words.slice(0, -length)];
  const isParted = others.some((word) => SIGN.test(word) || is(word, 'has') || is(word, 'about'));
  const saysLeft = others.some((word) => is(word, 'left') || is(word, 'points'));
  const mayBeLeft = saysLeft || phrase.some((word) => is(word, 'as')) || (after === undefined && !isParted);
  const names = others.filter((word) => !parts(word, is) && !is(word, 'filler') && !is(word, 'about'));
  const isUnclear = mayBeLeft && names.some(isAmount);
  return { names, amounts: isUnclear ? [] : [phrase.join(' ')] };
}

/** Without a tick beside `done`. */
export function withoutTick(
  words: readonly string[],
  is: (word: string | undefined, kind: Kind) => boolean,
): readonly string[] {
  const others = words.filter((word) => word !== '✅');
  return others.some((word) => is(word, 'done')) ? others : words;
}

/** Without what was left until now: `berth-7 3` in place of `berth-7 from 5 to 3` and of `berth-7 5 -> 3`. */
export function withoutFormer(
  words: readonly string[],
  callsCard: (word: string) => boolean,
  is: (word: string | undefined, kind: Kind) => boolean,
): readonly string[] {
  const at = words.findIndex((word) => is(word, 'to'));
  const isNumber = (word: string | undefined) => word !== undefined && parsePoints(word) !== undefined;
  if (!isNumber(words[at - 1]) || !isNumber(words[at + 1])) return words;
  const isSaid = is(words[at - 2], 'from');
  // `5 -> 3` is about card 5 where there is one, and `card 5 -> 3` in any case. `2 to 3` may be anything.
  const isAlone = at < 2 || is(words[at - 2], 'change');
  const isCard = isAlone ? callsCard(words[at - 1] ?? '') : is(words[at - 2], 'card');
  const isSign = SIGN.test(words[at] ?? '');
  // `berth-7 2 to 3` is somewhere between them.
  const isRange = (parsePoints(words[at - 1] ?? '') ?? 0) < (parsePoints(words[at + 1] ?? '') ?? 0);
  if (!isSaid && (isCard || (!isSign && (isAlone || isRange)))) return words;
  return [...words.slice(0, at - (isSaid ? 2 : 1)), ...words.slice(at + 1)];
}

/** Without what was, where what is follows: `berth-7 3` in place of `berth-7 was 5 is 3`. */
export function withoutWas(
  words: readonly string[],
  is: (word: string | undefined, kind: Kind) => boolean,
): readonly string[] {
  const at = words.findIndex((word) => is(word, 'was'));
  const [former = '', ...after] = words.slice(at + 1);
  const [left = '', ...more] = after.filter((word) => !is(word, 'now'));
  const isBoth = at >= 0 && parsePoints(former) !== undefined && parsePoints(left) !== undefined;
  return isBoth && more.length === 0 ? [...words.slice(0, at), left] : words;
}

/** Whether the word stands between a card and what is said about it. */
function parts(word: string, is: (word: string | undefined, kind: Kind) => boolean): boolean {
  return SIGN.test(word) || is(word, 'has') || is(word, 'left');
}

/** What cards are called by, and what is said about them: `2: 3`, `2 has 3`, `berth-7 left 3`, `berth-7 3`, `done with 2`, `3`. */
export function namesAndAmounts(
  words: readonly string[],
  is: (word: string | undefined, kind: Kind) => boolean,
): { readonly names: readonly string[]; readonly amounts: readonly string[] } {
  const parting = (word: string): boolean => parts(word, is);
  const first = words.findIndex((word) => !parting(word));
  const told = words.slice(first < 0 ? words.length : first);
  if (told.length > 1 && is(told[0], 'done')) {
    const isParted = SIGN.test(told[1] ?? '') || is(told[1], 'with');
    return { names: told.slice(isParted ? 2 : 1), amounts: told.slice(0, 1) };
  }
  const partedAt = told.findIndex(parting);
  const amountsAt = partedAt < 0 ? told.length - 1 : partedAt;
  const names = told.slice(0, Math.max(amountsAt, 0));
  // `2 left 3` may be about two cards, and `is berth-7 done` asks.
  const isUnclear =
    (is(told[partedAt], 'left') && parsePoints(told[partedAt - 1] ?? '') !== undefined) ||
    (names.length > 0 && words.slice(0, first).some((word) => !SIGN.test(word)));
  return {
    names,
    amounts: isUnclear ? [] : told.slice(Math.max(amountsAt, 0)).filter((word) => !parting(word)),
  };
}

/** Takes `points`, `left`, `to go` and the like off the end. */
export function withoutLeft(
  words: readonly string[],
  vocabulary: AnswerVocabulary,
): { readonly words: readonly string[]; readonly saysLeft: boolean } {
  let [count, saysLeft] = [words.length, false];
  for (;;) {
    const endsWith = (length: number, phrases: readonly string[]): boolean =>
      count > length && phrases.includes(plainly(words.slice(count - length, count).join(' ')));
    const leftWords = [2, 1].find((length) => endsWith(length, vocabulary.left));
    const pointsWords = [2, 1].find((length) => endsWith(length, vocabulary.points));
    if (leftWords === undefined && pointsWords === undefined) break;
    saysLeft ||= leftWords !== undefined;
    count -= leftWords ?? pointsWords ?? 0;
  }
  return { words: words.slice(0, count), saysLeft };
}
