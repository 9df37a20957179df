/**
 * Numbers in the forms that people type them, as the reader takes them: `3` for `three`, `3️⃣` and `:three:`, `2½` for
 * `2 1/2`, `6 ish` for `6ish`, and `1: 3` for `1) 3` and `1. 3` in a list.
 */
import { type AnswerVocabulary, isWordOfAnswers } from './answer-vocabulary.ts';
import { SIGN } from './put-in-order.ts';
import { isNumber, plainly, wordsOf } from './typed-words.ts';
import { type CardsToAnswer, callsCard } from './understand-part.ts';

const KEYCAP = /(\d)\uFE0F?\u20E3/gu;
const EMOJI_NAME = /:([a-z]{3,9}):/gi;
/** A whole number and a half, which together are one number. */
const MIXED = /(?<![\p{L}\d.,:/-])(\d{1,3})(?: ?½| 1\/2(?![\d/]))/gu;
/** The place of a card in the list. */
const PLACE = /(?<![\p{L}\d.,])(\d{1,2})(?:st|nd|rd|th)(?![\p{L}\d])/giu;
/** A number and the letters on its heels. */
const GLUED = /(?<![\p{L}\d.,/-])([\d.,]{0,4}[\d½])-?(\p{L}{1,10})(?![\p{L}\d-])/gu;
/** A word before a card's number or short name. */
const TICKET = /(?<![\p{L}\d-])(\p{L}{2,8}\.?)[ #]+(?=\p{L}{0,10}-?\d)/gu;
export const WORD = /[\p{L}’'&+]+/gu;
/** So much before and behind a word is looked at for the words beside it. */
const BESIDE_LENGTH = 40;

/** `2) ` and `(2) `, wherever they stand, and `2. ` before a number at the beginning of a line. */
const LIST_NUMBER = /(?<=^|[\s,;])\(?(\d{1,4})\)(?=\s)/g;
const LINE_NUMBER = /^[ \t]*(\d{1,3})\.[ \t]+(?=[\d½])/gm;
const DOTTED = /(?<=^|[\s,;])(\d{1,3})\.(?=\s)/g;

export function inDigits(typed: string, cards: CardsToAnswer, vocabulary: AnswerVocabulary): string {
  const { numbers, points, left, guess, done, worked, card, ticket, andHalf, half } = vocabulary;
  const digitOf = (word: string): number => numbers.indexOf(word.toLowerCase());
  const follows = [points, left, guess, done, worked].flat();
  const digits = typed
    .replace(KEYCAP, '$1')
    .replace(EMOJI_NAME, (sign, word: string) => (digitOf(word) < 0 ? sign : String(digitOf(word))))
    .replace(WORD, (word, at: number, all: string) => wordInDigits(word, at, all, cards, vocabulary))
    .replace(TICKET, (before, word: string) =>
      ticket.includes(word.toLowerCase()) && cards.positionOf(word) === undefined ? `${card[0]} ` : before,
    );
  const withHalves = replacePhrases(replacePhrases(digits, andHalf, '½'), half, '½');
  return listed(withHalves)
    .replace(PLACE, `${card[0]} $1`)
    .replace(MIXED, (mixed, whole: string) => (callsCard(whole, cards) ? mixed : `${whole}½`))
    .replace(GLUED, (glued, number: string, letters: string) =>
      follows.includes(plainly(letters)) && cards.positionOf(glued) === undefined
        ? `${number} ${letters}`
        : glued,
    );
}

/** `3` for `three`, `card 2` for `second`, and nothing for `one` in `the second one is done`. */
function wordInDigits(
  word: string,
  at: number,
  all: string,
  { positionOf }: CardsToAnswer,
  vocabulary: AnswerVocabulary,
): string {
  const { ordinals, numbers, card, every, has, done, rest, other, pronoun, unchanged } = vocabulary;
  const plain = word.toLowerCase();
  if (positionOf(word) !== undefined) return word;
  if (ordinals.includes(plain)) return `${card[0]} ${ordinals.indexOf(plain) + 1}`;
  const digit = numbers.indexOf(plain);
  if (digit < 0) return word;
  const end = at + word.length;
  const before = plainly(wordsOf(all.slice(Math.max(0, at - BESIDE_LENGTH), at)).at(-1) ?? '');
  const [after = ''] = wordsOf(all.slice(end, end + BESIDE_LENGTH));
  const next = plainly(after);
  const says = isNumber(next) || SIGN.test(next) || [...has, ...done, ...unchanged].includes(next);
  const tellsWhich = [...ordinals, ...rest, ...other].includes(before) || positionOf(before) !== undefined;
  if (pronoun.includes(plain) && tellsWhich && says) return '';
  // `one done` is one of them, and hardly the first; `one test fails` isn't about points.
  const isSomeCard = ![...card, ...every].includes(before) && [...has, ...done].includes(next);
  const isOfOther = /^\p{L}+$/u.test(next) && !isWordOfAnswers(next) && positionOf(next) === undefined;
  return isSomeCard || isOfOther ? word : String(digit);
}

function replacePhrases(text: string, phrases: readonly string[], by: string): string {
  const phrase = phrases.find((one) => ` ${text.toLowerCase()} `.includes(` ${one} `));
  if (phrase === undefined) return text;
  const at = ` ${text.toLowerCase()} `.indexOf(` ${phrase} `);
  return `${text.slice(0, at)}${by}${text.slice(at + phrase.length)}`;
}

/** `2.` is the number of a card where a list counts from 1. */
function listed(text: string): string {
  const dotted = [...text.matchAll(DOTTED)];
  const isCounted =
    dotted.length > 1 && dotted[0]?.index === 0 && dotted.every(([, number], i) => Number(number) === i + 1);
  return text.replace(LIST_NUMBER, '$1:').replace(isCounted ? DOTTED : LINE_NUMBER, '$1: ');
}
