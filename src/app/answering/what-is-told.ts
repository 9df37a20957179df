/** Tells what is said of cards or of the whole day from what is said besides. */
import { withoutEnds } from '../cards/card-link.ts';
import { type AnswerVocabulary, ENGLISH } from './answer-vocabulary.ts';
import { WORD } from './typed-numbers.ts';
import { isNumber, plainly, wordsOf } from './typed-words.ts';
import { type CardsToAnswer, callsCard } from './understand-part.ts';

/** What is told, and the words that aren't kept. */
export interface ToldOfDay {
  readonly kind: 'unchanged' | 'away';
  readonly leftOut?: readonly string[];
}

const NO_CARDS: CardsToAnswer = { count: 0, open: [], positionOf: () => undefined };
const DASH = /\s[-–—]\s/g;
/** So much of a text is looked at for the word beside a dash. */
const WORD_LENGTH = 40;
/** Begins a clause that says why, or something in brackets. */
const ASIDE = /^\s*\(/;
const BRACKETS = /\(([^()]{1,500})\)/g;
const LETTER = /\p{L}/u;
const LETTER_OR_DIGIT = /[\p{L}\d½✅]/u;
const BETWEEN_CLAUSES = new Set(' ,;\n\r');
const SENTENCE_END = /[.!?]\s+(?=\p{L})|(?<=[\p{L}\d])[.!?]\s+(?=\d)/gu;
/** A comma before a space, or not behind a digit, is none of a decimal. */
const CLAUSE_END = /([;\n\r]+|,(?=\s)|(?<!\d),|\s\/\s)/;
/** What may stand between an opening and what is said. */
const AFTER_OPENING = /^(?:[\s,.;:!]|[–-](?=\s))+/;

/** What is said of the whole day in a phrase; undefined: something else is said. */
export function aboutTheDay(text: string, vocabulary: AnswerVocabulary): ToldOfDay | undefined {
  const plain = plainly(text);
  const isAnyOf = (phrases: readonly string[]): boolean =>
    phrases.some((phrase) => plain === phrase || vocabulary.preamble.some((i) => plain === `${i} ${phrase}`));
  if (isAnyOf(vocabulary.unchanged)) return { kind: 'unchanged' };
  if (isAnyOf(vocabulary.away)) return { kind: 'away' };
  return undefined;
}

/** Whether nothing is said but thanks. */
export function isThanks(text: string, { thanks }: AnswerVocabulary = ENGLISH): boolean {
  return thanks.includes(plainly(text));
}

/** Whether an answer may be meant, whatever the cards are called. */
export function mayBeAnswer(text: string, vocabulary: AnswerVocabulary = ENGLISH): boolean {
  return aboutTheDay(text, vocabulary) !== undefined || isAboutCards(text, NO_CARDS, vocabulary);
}

/** Words such as `sorry, I meant` say nothing by themselves, unless a card is called so. */
export function withoutOpening(text: string, cards: CardsToAnswer, vocabulary: AnswerVocabulary): string {
  const plain = text.toLowerCase();
  const [first = ''] = plain.split(/[^\p{L}\p{N}-]/u, 1);
  const opening = vocabulary.opening.find((phrase) => isFollowed(plain, phrase));
  if (opening === undefined || cards.positionOf(first) !== undefined) return text;
  const rest = text.slice(opening.length).replace(AFTER_OPENING, '');
  return rest === '' ? text : withoutOpening(rest, cards, vocabulary);
}

function isFollowed(text: string, phrase: string): boolean {
  return text.startsWith(phrase) && AFTER_OPENING.test(text.slice(phrase.length, phrase.length + 2));
}

export function isAboutCards(
  text: string,
  { positionOf }: CardsToAnswer,
  vocabulary: AnswerVocabulary,
): boolean {
  const { done, nothing, surprise, blocked, note, every, both, rest, other } = vocabulary;
  const telling = new Set([done, nothing, surprise, blocked, note].flat());
  const words = wordsOf(text.replaceAll(/[,;?]/g, ' '));
  const saysSome = words.some(
    (word) => /[\d½]/.test(word) || telling.has(plainly(word)) || positionOf(word) !== undefined,
  );
  // `no change for both`
  const several = new Set([every, both, rest, other].flat());
  const isOfSeveral = words.some((word) => several.has(plainly(word)));
  return saysSome || (isOfSeveral && includesAny(words, vocabulary.unchanged));
}

function includesAny(words: readonly string[], phrases: readonly string[]): boolean {
  const said = ` ${plainly(words.join(' '))} `;
  return phrases.some((phrase) => said.includes(` ${phrase} `));
}

/** What is said of cards or of the day, and what isn't: `3` and `mail is down` of `3, mail is down`. */
export function withoutRemarks(
  text: string,
  cards: CardsToAnswer,
  vocabulary: AnswerVocabulary,
): { readonly told: string; readonly leftOut: readonly string[] } {
  const parted = text
    .replace(DASH, (dash, at: number, all: string) =>
      signOfDash(dash, all.slice(0, at), all.slice(at + dash.length), cards, vocabulary),
    )
    .replace(BRACKETS, (bracketed, words: string) => (LETTER.test(words) ? `;(${words} ` : bracketed))
    .replace(WORD, (word, at: number, all: string) => {
      if (vocabulary.because.includes(word.toLowerCase())) return ';(';
      if (!vocabulary.parting.includes(word.toLowerCase())) return word;
      const before = wordsOf(all.slice(Math.max(0, at - WORD_LENGTH), at)).at(-1) ?? '';
      return vocabulary.whole.includes(plainly(before)) ? word : `;${word}`;
    })
    .replace(SENTENCE_END, '; ');
  // Every second piece is what parts two clauses.
  const typed = parted.split(CLAUSE_END);
  const isContrary = (clause: string): boolean =>
    vocabulary.parting.includes(plainly(wordsOf(clause)[0] ?? ''));
  const pieces = typed.map((piece) => (isContrary(piece) ? ` ${wordsOf(piece).slice(1).join(' ')}` : piece));
  const contrary = new Set(pieces.filter((_, i) => isContrary(typed[i] ?? '')));
  const clauses = pieces.filter((_, i) => i % 2 === 0);
  const says = (clause: string, words: readonly string[]): boolean =>
    wordsOf(clause.replace(ASIDE, '')).some((word) => words.includes(plainly(word)));
  const isDone = clauses.some(
    (clause) => says(clause, vocabulary.done) && !isHope(clause, cards, vocabulary),
  );
  // `done, review to do`
  const isLeftOver = (clause: string): boolean =>
    includesAny(wordsOf(clause), vocabulary.left) && !isAboutCards(clause, cards, vocabulary);
  const isBut = (clause: string): boolean =>
    contrary.has(clause) && !isAboutCards(withoutNames(clause, cards), cards, vocabulary);
  const takesBack = (clause: string): boolean =>
    (isDone && (says(clause, vocabulary.hedge) || isLeftOver(clause) || isBut(clause))) ||
    (clause !== clauses[0] && vocabulary.correction.includes(plainly(clause)));
  const isTold = (clause: string): boolean =>
    takesBack(clause) ||
    aboutTheDay(clause, vocabulary) !== undefined ||
    beginsWithRest(clause, vocabulary) ||
    (isAboutCards(ASIDE.test(clause) ? withoutNames(clause, cards) : clause, cards, vocabulary) &&
      !isHope(clause, cards, vocabulary));
  const isRemark = (clause: string): boolean =>
    !takesBack(clause) && (!isTold(clause) || isAboutSameCard(clause, clauses, cards, vocabulary));
  const remarks = clauses.filter((clause) => LETTER.test(clause) && isRemark(clause));
  const dropped = new Set([...remarks, ...clauses.slice(1).filter((clause) => isFormer(clause, vocabulary))]);
  // `3 (2 done)` is not about card 2.
  const isWorked = (piece: string): boolean =>
    ASIDE.test(piece) && /\d/.test(piece) && says(piece, vocabulary.done);
  const kept = pieces
    .map((piece) => (dropped.has(piece) ? '' : isWorked(piece) ? piece : piece.replace(ASIDE, ' ')))
    .join('');
  const told = withoutEnds(kept, BETWEEN_CLAUSES, 'both ends');
  if (!LETTER_OR_DIGIT.test(told)) return { told: text, leftOut: [] };
  const leftOut = remarks
    .map((remark) => remark.replace(ASIDE, '').trim())
    .filter((remark) => !isThanks(remark, vocabulary) && wordsOf(remark).length > 1);
  return { told, leftOut };
}

/** `berth-7 - 3` is `berth-7 : 3`; what follows an amount is a remark, and `2 - 3` may be anything. */
function signOfDash(
  dash: string,
  before: string,
  after: string,
  cards: CardsToAnswer,
  vocabulary: AnswerVocabulary,
): string {
  const isAmount = (word: string | undefined): boolean =>
    word !== undefined &&
    ((isNumber(word) && !callsCard(word, cards)) || vocabulary.done.includes(plainly(word)));
  if (!isAmount(wordsOf(after.slice(0, WORD_LENGTH))[0])) return '; ';
  return isAmount(wordsOf(before.slice(-WORD_LENGTH)).at(-1)) ? dash : ' : ';
}

/** `the crane is slow` after `crane log 3`: it says no amount, and another clause says one of the card that it names. */
function isAboutSameCard(
  clause: string,
  clauses: readonly string[],
  cards: CardsToAnswer,
  vocabulary: AnswerVocabulary,
): boolean {
  const named = cardsIn(clause, cards);
  const saysAmount = (one: string): boolean => isAboutCards(withoutNames(one, cards), cards, vocabulary);
  if (named.length === 0 || saysAmount(clause)) return false;
  const told = new Set(clauses.filter(saysAmount).flatMap((one) => cardsIn(one, cards)));
  return named.every((card) => told.has(card));
}

function cardsIn(clause: string, { positionOf }: CardsToAnswer): number[] {
  return wordsOf(clause).flatMap((word) => (isNumber(word) ? [] : (positionOf(word) ?? [])));
}

export function withoutNames(clause: string, { positionOf }: CardsToAnswer): string {
  return wordsOf(clause.replace(ASIDE, ''))
    .filter((word) => isNumber(word) || positionOf(word) === undefined)
    .join(' ');
}

/** `should be done tomorrow`, of no card that is named. */
function isHope(
  clause: string,
  { positionOf }: CardsToAnswer,
  { hope, blocked, note }: AnswerVocabulary,
): boolean {
  const words = wordsOf(clause);
  // A keyword stands for the words behind it, which were taken out.
  const isPlain = (word: string): boolean =>
    !/\d/.test(word) && positionOf(word) === undefined && ![...blocked, ...note].includes(plainly(word));
  return words.some((word) => hope.includes(plainly(word))) && words.every(isPlain);
}

/** `the rest is the same` */
function beginsWithRest(clause: string, { rest, other, filler }: AnswerVocabulary): boolean {
  const words = wordsOf(clause).map(plainly);
  const said = words.filter((word) => !filler.includes(word)).join(' ');
  return [...rest, ...other].some((phrase) => `${said} `.startsWith(`${phrase} `));
}

/** `was 5`. */
function isFormer(clause: string, { was }: AnswerVocabulary): boolean {
  const [first = '', second = '', third] = wordsOf(clause.replace(ASIDE, ''));
  return third === undefined && was.includes(plainly(first)) && isNumber(second);
}
