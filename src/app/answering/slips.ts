/** Reads over a slip in a word of answers: two letters that are swapped, and one too many or too few. */
import { type AnswerVocabulary, isWordOfAnswers } from './answer-vocabulary.ts';
import { WORD } from './typed-numbers.ts';
import type { CardsToAnswer } from './understand-part.ts';

/** Shorter words are too near to others. */
const SHORTEST = 4;
/** In words from this length on, any letter may be missing or one too many; in shorter ones, one beside its like. */
const LONG = 6;

/** Behind a word for what is said freely, it stays as it was typed. */
export function withoutSlips(
  text: string,
  { positionOf }: CardsToAnswer,
  vocabulary: AnswerVocabulary,
): string {
  const { done, left, worked, surprise, blocked, note, unchanged, away } = vocabulary;
  const free = [...blocked, ...note];
  const telling = [...done, ...left, ...worked, ...surprise, ...free, ...unchanged, ...away];
  const words = [...new Set(telling.flatMap((phrase) => phrase.split(' ')))];
  let isFree = false;
  return text.replace(WORD, (word) => {
    const isKnown = isWordOfAnswers(word) || positionOf(word) !== undefined;
    const meant = isFree || isKnown || word.length < SHORTEST ? [] : words.filter((one) => isSlip(word, one));
    const read = meant.length === 1 ? (meant[0] ?? word) : word;
    isFree ||= free.includes(read.toLowerCase());
    return read;
  });
}

function isSlip(typed: string, word: string): boolean {
  const [a, b] = [typed.toLowerCase(), word];
  // `neither` is another word than `either`.
  if (b.length < SHORTEST || Math.abs(a.length - b.length) > 1 || a.charAt(0) !== b.charAt(0)) return false;
  const at = [...b, ''].findIndex((letter, i) => letter !== a.charAt(i));
  if (a.length === b.length)
    return `${a.slice(0, at)}${a.charAt(at + 1)}${a.charAt(at)}${a.slice(at + 2)}` === b && at + 1 < a.length;
  const [longer, shorter] = a.length > b.length ? [a, b] : [b, a];
  const isOneMore = `${longer.slice(0, at)}${longer.slice(at + 1)}` === shorter;
  const isTwin = longer.charAt(at) === longer.charAt(at - 1);
  return isOneMore && (isTwin || b.length >= LONG);
}
