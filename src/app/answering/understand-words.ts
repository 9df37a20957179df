/**
 * Understands an answer in words: `3` (one card), `2, 0` (in order), `2: 3` (card 2 has 3 left), `2 done`, `berth-7 3`,
 * `2: 3 worked 1 surprise 2`, `2: 3 blocked: the key note: ask Bo`, several parted by commas, semicolons or lines; `same` and `away`. What can be read in two ways
 * is not guessed.
 */
import { withRestSaid } from './all-but-some.ts';
import { type AnswerVocabulary, ENGLISH } from './answer-vocabulary.ts';
import { type FreeKind, type SaidInClause, takeFreeTexts, withoutKeywords } from './free-texts.ts';
import { extraInOrder } from './put-in-order.ts';
import { withoutSlips } from './slips.ts';
import { isOwn, splitParts } from './split-parts.ts';
import { inDigits, WORD } from './typed-numbers.ts';
import { isNumber, plainly, wordsOf } from './typed-words.ts';
import {
  type CardsToAnswer,
  callsCard,
  type PartOfAnswer,
  type Said,
  type Unclear,
  understandPart,
  type WordsForCard,
} from './understand-part.ts';
import { aboutTheDay, isAboutCards, type ToldOfDay, withoutOpening, withoutRemarks } from './what-is-told.ts';

export type Understood =
  | ToldOfDay
  | {
      readonly kind: 'answers';
      readonly answers: readonly WordsForCard[];
      /** What is said besides, and isn't kept. */
      readonly leftOut?: readonly string[];
    }
  /** Nothing in it is a card, a number, or a word of answers. */
  | { readonly kind: 'not-about-cards' }
  | { readonly kind: 'unclear'; readonly problems: readonly Unclear[] };

/** More would be a wall of text; correcting the first ones corrects most. */
const MAX_PROBLEMS = 5;
/** Before an item of a list. */
const BULLET = /^[ \t]*[-–*•◦▪][ \t]+/gm;

export function understandWords(
  typed: string,
  cards: CardsToAnswer,
  vocabulary: AnswerVocabulary = ENGLISH,
): Understood {
  const text = withoutOpening(
    withoutSlips(typed.replace(BULLET, '').trim(), cards, vocabulary),
    cards,
    vocabulary,
  );
  const whole = aboutTheDay(text, vocabulary);
  if (whole) return whole;
  const free = takeFreeTexts(text, vocabulary, (clause, isBeforeKeyword) =>
    saidIn(clause, isBeforeKeyword, cards, vocabulary),
  );
  const said = withRestSaid(inDigits(free.text, cards, vocabulary), cards, vocabulary);
  const { told, leftOut } = withoutRemarks(said, cards, vocabulary);
  const asked = leftOut.length > 0 ? aboutTheDay(told, vocabulary) : undefined;
  if (asked) return { ...asked, leftOut };
  if (!isAboutCards(told, cards, vocabulary)) return { kind: 'not-about-cards' };
  const split = splitParts(told, cards, vocabulary);
  if ('code' in split) return { kind: 'unclear', problems: [split] };
  // Of one card, `same, 3` says the number.
  const isSame = (part: string): boolean => aboutTheDay(part, vocabulary)?.kind === 'unchanged';
  const isOne = cards.count === 1 && split.some((part) => /\d/.test(part));
  const parts = isOne ? split.filter((part) => !isSame(part)) : split;
  const problems: Unclear[] = [];
  const answers: Said[] = [];
  const texts = [...free.texts];
  for (const [i, part] of parts.entries()) {
    const { rest, kinds } = withoutKeywords(part, vocabulary);
    const own = texts.splice(0, kinds.length);
    const wordsOfKind = (wanted: FreeKind) => own.find(({ kind }) => kind === wanted)?.words;
    const [blockedOn, note] = [wordsOfKind('blocked'), wordsOfKind('note')];
    const place = {
      text: rest,
      place: i + 1,
      isAlone: parts.length === 1,
      taken: answers.map(({ position }) => position),
      isBlocked: blockedOn !== undefined,
    };
    const answer = understandPart(place, cards, vocabulary);
    const each = 'code' in answer ? (understandEach(place, cards, vocabulary) ?? answer) : answer;
    if ('code' in each) {
      const problem = withItsCard(each, rest, blockedOn, cards, vocabulary);
      // Numbers may stand there in other words than they were typed in.
      const isWhole = parts.length === 1 && 'typed' in problem && problem.typed === rest;
      const isOther = isWhole && (rest === '' || !typed.includes(rest));
      problems.push(isOther ? { ...problem, typed: typed.trim() } : problem);
    } else if (blockedOn !== undefined && !isReason(blockedOn, rest, each, cards, vocabulary))
      problems.push({ code: 'blocked-on-what' });
    else
      answers.push(
        ...each.map((said) => ({ ...said, ...(blockedOn && { blockedOn }), ...(note && { note }) })),
      );
  }
  problems.push(...problemsOfAll(answers, cards, problems.length > 0));
  if (problems.length > 0) return { kind: 'unclear', problems: problems.slice(0, MAX_PROBLEMS) };
  const plain = answers.map(({ called: _, typed: __, mayBePoints: ___, ...answer }) => answer);
  return { kind: 'answers', answers: plain, ...(leftOut.length > 0 && { leftOut }) };
}

/** What a clause says by itself. */
function saidIn(
  clause: string,
  isBeforeKeyword: boolean,
  cards: CardsToAnswer,
  vocabulary: AnswerVocabulary,
): SaidInClause | undefined {
  const text = inDigits(clause, cards, vocabulary).trim();
  if (isBeforeKeyword && callsCard(text, cards)) return 'named';
  const [more = '', amount = '', ...others] = extraInOrder(wordsOf(text), vocabulary);
  const isMore = [...vocabulary.worked, ...vocabulary.surprise].includes(plainly(more));
  if (isMore && isNumber(amount) && others.every((word) => vocabulary.points.includes(plainly(word))))
    return 'more';
  const said = text === '' ? [] : understandPart({ text, place: 0, isAlone: false }, cards, vocabulary);
  const [first] = 'code' in said ? [] : said;
  if (first === undefined) return undefined;
  if (first.called !== undefined) return first.mayBePoints && !text.includes(':') ? undefined : 'named';
  if (!isNumber(first.typed)) return undefined;
  return cards.count > 1 && isOwn(text, cards) ? 'card-or-bare' : 'bare';
}

/** `tide is done and price has 3 left`, each with its card; undefined: something else. */
function understandEach(
  part: PartOfAnswer,
  cards: CardsToAnswer,
  vocabulary: AnswerVocabulary,
): readonly Said[] | undefined {
  const clauses = part.text
    .replace(WORD, (word) => (vocabulary.and.includes(word.toLowerCase()) ? ';' : word))
    .split(';');
  if (clauses.length < 2) return undefined;
  const said = clauses.map((text) => understandPart({ text, place: 0, isAlone: false }, cards, vocabulary));
  const all = said.flatMap((one) => ('code' in one ? [] : one));
  const isClear = said.every((one) => !('code' in one)) && all.every(({ called }) => called !== undefined);
  return isClear && !part.isBlocked ? all : undefined;
}

/**
 * Whether a card is blocked, and the words say on what: `was blocked` isn't so any more, `3 left` is an answer, and in
 * `stuck on berth-7` that is the card itself.
 */
function isReason(
  words: string,
  before: string,
  said: readonly Said[],
  { count, positionOf }: CardsToAnswer,
  { was, about, left, points, filler }: AnswerVocabulary,
): boolean {
  const isAny = (word: string, ...kinds: readonly (readonly string[])[]): boolean =>
    kinds.some((kind) => kind.includes(plainly(word)));
  const isOver = isAny(wordsOf(before).at(-1) ?? '', was);
  const amount = wordsOf(words).filter((word) => !isAny(word, left, points));
  const saysAmount = amount.length === 1 && isNumber(amount[0] ?? '');
  const isAmount = saysAmount && said.every(({ leftPoints }) => leftPoints === undefined);
  const named = wordsOf(words).filter((word) => !isAny(word, about, filler));
  const isItself = named.length === 1 && (positionOf(named[0] ?? '') ?? count + 1) <= count;
  return words !== '' && !isOver && !isAmount && !isItself;
}

/** What is missing of a card that is named, or of the only one. */
function withItsCard(
  problem: Unclear,
  words: string,
  blockedOn: string | undefined,
  cards: CardsToAnswer,
  { worked, surprise }: AnswerVocabulary,
): Unclear {
  const position = cardNamedIn(`${words} ${blockedOn ?? ''}`, cards);
  if (position === undefined) return problem;
  if (problem.code === 'which-blocked') return { code: 'blocked-on-what' };
  if (problem.code === 'not-points') return { ...problem, position };
  const saysLittle = problem.code === 'not-an-answer' || problem.code === 'no-such-card';
  if (!saysLittle || isNumber(problem.typed)) return problem;
  const isExtra = wordsOf(words).some((word) => [...worked, ...surprise].includes(plainly(word)));
  const isNumbered = wordsOf(words).some((word) => /\d/.test(word) && cards.positionOf(word) === undefined);
  const saysNumber = isNumbered && !isExtra;
  return { code: saysNumber ? 'not-an-answer' : 'no-amount', typed: words, position };
}

/** The one of the person's own; numbers that may be points name none. */
function cardNamedIn(text: string, cards: CardsToAnswer): number | undefined {
  const named = wordsOf(text.replaceAll(/[,()?]/g, ' '))
    .filter((word) => !isNumber(word) || Number(word) > cards.count)
    .flatMap((word) => cards.positionOf(word) ?? []);
  const [position, ...others] = new Set(cards.count === 1 && named.length === 0 ? [1] : named);
  return position === undefined || position > cards.count || others.length > 0 ? undefined : position;
}

/** What only shows when the parts are seen together. */
function problemsOfAll(answers: readonly Said[], cards: CardsToAnswer, hasProblems: boolean): Unclear[] {
  const positions = answers.map(({ position }) => position);
  const twice = answers.find(({ position }, i) => positions.indexOf(position) !== i);
  // `1, 2 done` may be about two cards, or say 1 of the first card and `done` of the second.
  const isDoneNamed = answers.some(({ called, typed }) => called !== undefined && !isNumber(typed));
  const unsettled = answers.find(
    ({ called, typed }) => isDoneNamed && called === undefined && isOwn(typed, cards),
  );
  if (unsettled) {
    return [{ code: 'number-two-ways', typed: unsettled.typed, place: String(unsettled.position) }];
  }
  // `41: 3, 2 done` may say of card 41 what was done.
  const isCardNamed = ({ called }: Said): boolean =>
    called !== undefined && (!isNumber(called) || callsCard(called, cards));
  // And `1 done, 3 to go` of one card.
  const isBareNumber = (said: Said | undefined): boolean =>
    said !== undefined && said.called === undefined && isNumber(said.typed);
  const worked = answers.find(
    ({ called, mayBePoints, leftPoints }, i) =>
      mayBePoints &&
      called !== undefined &&
      leftPoints === 0 &&
      (answers.slice(0, i).some(isCardNamed) || isBareNumber(answers[i + 1])),
  );
  if (worked?.called !== undefined) return [{ code: 'done-or-worked', typed: worked.called }];
  const after = answers.find(({ called, typed }, i) => {
    const before = answers[i - 1];
    if (called !== undefined || before?.called === undefined) return false;
    return answers.length !== cards.count || !isNumber(typed) || before.leftPoints === 'unchanged';
  });
  if (after) return [{ code: 'number-of-which', typed: after.typed, place: String(after.position) }];
  if (twice) return [{ code: 'answered-twice', card: twice.called ?? String(twice.position) }];
  if (hasProblems) return [];
  const isAnyNamed = answers.some(({ called }) => called !== undefined);
  if (isAnyNamed || answers.length === cards.count) return [];
  return [{ code: 'wrong-count', cards: cards.count, numbers: answers.length }];
}
