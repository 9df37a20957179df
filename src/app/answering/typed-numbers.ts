/**
 * Numbers in the forms that people type them, as the reader takes them: `3` for `three`, `3️⃣` and `:three:`, `2½` for
 * `2 1/2`, `6 ish` for `6ish`, and `1: 3` for `1) 3` and `1. 3` in a list.
 */
import type { AnswerVocabulary } from './answer-vocabulary.ts';
import { plainly, wordsOf } from './typed-words.ts';
import { type CardsToAnswer, callsCard } from './understand-part.ts';

const KEYCAP = /(\d)\uFE0F?\u20E3/gu;
const EMOJI_NAME = /:([a-z]{3,9}):/gi;
/** A whole number and a half, which together are one number. */
const MIXED = /(?<![\p{L}\d.,:/-])(\d{1,3})(?: ?½| 1\/2(?![\d/]))/gu;
/** A number and the letters on its heels. */
/** The place of a card in the list. */
const PLACE = /(?<![\p{L}\d.,])(\d{1,2})(?:st|nd|rd|th)(?![\p{L}\d])/giu;
const GLUED = /(?<![\p{L}\d.,/-])([\d.,]{0,4}[\d½])-?(\p{L}{1,10})(?![\p{L}\d-])/gu;
export const WORD = /[\p{L}’'&+]+/gu;
/** So much before and behind a word is looked at for the words beside it. */
const BESIDE_LENGTH = 40;

/** `2) ` and `(2) `, wherever they stand, and `2. ` before a number at the beginning of a line. */
const LIST_NUMBER = /(?<=^|[\s,;])\(?(\d{1,4})\)(?=\s)/g;
const LINE_NUMBER = /^[ \t]*(\d{1,3})\.[ \t]+(?=[\d½])/gm;
const DOTTED = /(?<=^|[\s,;])(\d{1,3})\.(?=\s)/g;

export function inDigits(text: string, cards: CardsToAnswer, vocabulary: AnswerVocabulary): string {
  const { numbers, points, left, guess, done, worked } = vocabulary;
  const digitOf = (word: string): number => numbers.indexOf(word.toLowerCase());
  const follows = [points, left, guess, done, worked].flat();
  const digits = text
    .replace(KEYCAP, '$1')
    .replace(EMOJI_NAME, (sign, word: string) => (digitOf(word) < 0 ? sign : String(digitOf(word))))
    .replace(WORD, (word, at: number, all: string) => {
      const place = vocabulary.ordinals.indexOf(word.toLowerCase()) + 1;
      if (place > 0 && cards.positionOf(word) === undefined) return `${vocabulary.card[0]} ${place}`;
      const isNumber = digitOf(word) >= 0 && cards.positionOf(word) === undefined;
      if (!isNumber) return word;
      const before = wordsOf(all.slice(Math.max(0, at - BESIDE_LENGTH), at)).at(-1) ?? '';
      const isMarked = [...vocabulary.card, ...vocabulary.every].includes(plainly(before));
      const end = at + word.length;
      const [next = ''] = wordsOf(all.slice(end, end + BESIDE_LENGTH));
      // `one done` is one of them, and hardly the first.
      const isSomeCard = !isMarked && [...vocabulary.has, ...done].includes(plainly(next));
      return isSomeCard ? word : String(digitOf(word));
    });
  return listed(digits)
    .replace(PLACE, `${vocabulary.card[0]} $1`)
    .replace(MIXED, (typed, whole: string) => (callsCard(whole, cards) ? typed : `${whole}½`))
    .replace(GLUED, (typed, number: string, letters: string) =>
      follows.includes(plainly(letters)) && cards.positionOf(typed) === undefined
        ? `${number} ${letters}`
        : typed,
    );
}

/** `2.` is the number of a card where a list counts from 1. */
function listed(text: string): string {
  const dotted = [...text.matchAll(DOTTED)];
  const isCounted =
    dotted.length > 1 && dotted[0]?.index === 0 && dotted.every(([, number], i) => Number(number) === i + 1);
  return text.replace(LIST_NUMBER, '$1:').replace(isCounted ? DOTTED : LINE_NUMBER, '$1: ');
}
