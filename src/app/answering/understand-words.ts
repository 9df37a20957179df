/**
 * Understands an answer in words: `3` (one card), `2, 0` (in order), `2: 3` (card 2 has 3 left), `2 done`, `berth-7 3`,
 * `2: 3 worked 1 surprise 2`, `2: 3 blocked: the key note: ask Bo`, several parted by commas, semicolons or lines; `same` and `away`. What can be read in two ways
 * is not guessed.
 */
import { type AnswerVocabulary, ENGLISH } from './answer-vocabulary.ts';
import { type FreeKind, takeFreeTexts, withoutKeywords } from './free-texts.ts';
import { extraInOrder, SIGN } from './put-in-order.ts';
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
/** `2,5` may be two and a half, or 2 and 5. A space, as in `2, 5`, or a name, as in `2: 3,5`, settles it. */
const UNSETTLED_COMMA = /(?<=\d),(?=5(?!\s*:|[\d.½]))/;
/** Before an item of a list. */
const BULLET = /^[ \t]*[-–*•◦▪][ \t]+/gm;
/** No slash between two numbers, `3 / 5`, and no comma of thousands. */
const SETTLED_SEPARATOR = /[;\n\r]+|\s\/\s(?!\d)|,(?!5(?!\s*:|[\d.½])|\d{3}(?!\d))|(?<!\d),/;
/** A number with a decimal comma, whatever follows. */
const DECIMAL_COMMA = /^(\d+),(\d+)(?![\d.½])/;

export function understandWords(
  typed: string,
  cards: CardsToAnswer,
  vocabulary: AnswerVocabulary = ENGLISH,
): Understood {
  const text = withoutOpening(typed.replace(BULLET, '').trim(), cards, vocabulary);
  const whole = aboutTheDay(text, vocabulary);
  if (whole) return whole;
  const free = takeFreeTexts(text, vocabulary);
  const { told, leftOut } = withoutRemarks(inDigits(free.text, cards, vocabulary), cards, vocabulary);
  const asked = leftOut.length > 0 ? aboutTheDay(told, vocabulary) : undefined;
  if (asked) return { ...asked, leftOut };
  if (!isAboutCards(told, cards, vocabulary)) return { kind: 'not-about-cards' };
  const parts = splitParts(told, cards, vocabulary);
  if ('code' in parts) return { kind: 'unclear', problems: [parts] };
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
    if ('code' in each) problems.push(withItsCard(each, rest, blockedOn, cards));
    else if (blockedOn !== undefined && !isReason(blockedOn, rest, each, cards, vocabulary))
      problems.push({ code: 'blocked-on-what' });
    else
      answers.push(
        ...each.map((said) => ({ ...said, ...(blockedOn && { blockedOn }), ...(note && { note }) })),
      );
  }
  problems.push(...problemsOfAll(answers, cards, problems.length > 0));
  if (problems.length > 0) return { kind: 'unclear', problems: problems.slice(0, MAX_PROBLEMS) };
  const said = answers.map(({ called: _, typed: __, mayBePoints: ___, ...answer }) => answer);
  return { kind: 'answers', answers: said, ...(leftOut.length > 0 && { leftOut }) };
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
  const last = wordsOf(words.slice(words.lastIndexOf(',') + 1)).filter((word) => !isAny(word, left, points));
  const saysAmount = last.length === 1 && isNumber(last[0] ?? '');
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
): Unclear {
  const position = cardNamedIn(`${words} ${blockedOn ?? ''}`, cards);
  if (position === undefined) return problem;
  if (problem.code === 'which-blocked') return { code: 'blocked-on-what' };
  if (problem.code === 'not-points') return { ...problem, position };
  const saysLittle = problem.code === 'not-an-answer' || problem.code === 'no-such-card';
  return saysLittle && !isNumber(problem.typed) ? { code: 'no-amount', typed: words, position } : problem;
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
  const worked = answers.find(
    ({ called, mayBePoints, leftPoints }, i) =>
      mayBePoints && called !== undefined && leftPoints === 0 && answers.slice(0, i).some(isCardNamed),
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

/** Whether it calls one of the cards that the prompt listed. */
function isOwn(reference: string, { count, positionOf }: CardsToAnswer): boolean {
  return (positionOf(reference) ?? Number.POSITIVE_INFINITY) <= count;
}

/** `3, 1, 0` for `3, 1 and 0`, where there is nothing but numbers. */
function withCommas(text: string, vocabulary: AnswerVocabulary): string {
  const words = wordsOf(text);
  const isAnd = (word: string): boolean => vocabulary.and.includes(word.toLowerCase());
  const isPlain = words.some(isAnd) && words.every((word) => isAnd(word) || isNumber(word.replace(/,$/, '')));
  return isPlain ? words.map((word) => (isAnd(word) ? ',' : word)).join(' ') : text;
}

/** In order, each with what it is about. */
function splitParts(
  given: string,
  cards: CardsToAnswer,
  vocabulary: AnswerVocabulary,
): readonly string[] | Unclear {
  const text = withCommas(given, vocabulary);
  const isMore = (word: string | undefined): boolean =>
    word !== undefined && [...vocabulary.worked, ...vocabulary.surprise].includes(word.toLowerCase());
  const isNow = (word = ''): boolean => vocabulary.now.includes(plainly(word));
  const endsInFormer = (part: string): boolean => {
    const [was = '', former = ''] = wordsOf(part).slice(-2);
    return vocabulary.was.includes(plainly(was)) && isNumber(former);
  };
  // `2: 3, worked 1` says both of card 2, and so do `2: 3, 1 worked` and `worked 1, 2: 3`.
  const inParts = (some: readonly string[]): string[] => {
    const parts: string[] = [];
    for (const part of some.map((text) => text.trim()).filter((text) => text !== '')) {
      const before = parts.at(-1);
      const words = extraInOrder(wordsOf(part), vocabulary);
      const isFirstMore = parts.length === 1 && isMore(extraInOrder(wordsOf(before ?? ''), vocabulary)[0]);
      if (isFirstMore) parts[0] = `${part} ${before}`;
      else if (before !== undefined && endsInFormer(before) && isNow(words[0]))
        parts[parts.length - 1] = `${before} ${words.join(' ')}`;
      // `berth-7, 3`
      else if (before !== undefined && callsCard(before, cards) && isNumber(words[0] ?? ''))
        parts[parts.length - 1] = `${before}: ${words.join(' ')}`;
      else if (before !== undefined && isMore(words[0]))
        parts[parts.length - 1] = `${before} ${words.join(' ')}`;
      else parts.push(part);
    }
    return parts;
  };
  const decimal = DECIMAL_COMMA.exec(text);
  if (decimal && cards.count === 1 && decimal[0] === text) return [text];
  const withHalves = inParts(text.split(SETTLED_SEPARATOR));
  const [first = '', ...others] = withHalves;
  if (withHalves.some((part) => namesCard(part, cards, vocabulary))) {
    return withHalves.flatMap((part) => eachCard(part, cards, vocabulary));
  }
  const comma = DECIMAL_COMMA.exec(first);
  const twoWays = (before: string): Unclear => ({
    code: 'comma-two-ways',
    ...{ typed: text, half: `${before}${comma?.[1] ?? 2}.5`, two: `${comma?.[1] ?? 2}, 5` },
  });
  // One number alone may be about one of two cards, or there are two numbers.
  const isOneNumber = comma?.[2] === '5' && others.length === 0 && first.split(',').length === 2;
  if (isOneNumber && cards.count === 2) return twoWays('1: ');
  const inOrder = wordsOf(text);
  if (
    others.length === 0 &&
    inOrder.length > 1 &&
    inOrder.length === cards.count &&
    inOrder.every((word) => isNumber(word) && !callsCard(word, cards))
  ) {
    const [card = '', left = ''] = inOrder;
    const mayBeCard = cards.count === 2 && isOwn(card, cards);
    return mayBeCard ? { code: 'space-two-ways', typed: text, card, left } : inOrder;
  }
  const withoutHalves = inParts(withHalves.flatMap((part) => part.split(UNSETTLED_COMMA)));
  // As many numbers as there are cards is what people mean.
  if (withoutHalves.length === cards.count) return withoutHalves;
  const isBetween = withHalves.length < cards.count && cards.count < withoutHalves.length;
  return isBetween ? twoWays('') : withHalves;
}

/** What is said of several cards with nothing between them: `2: 3 4: done`, `berth-7 3 berth-8 5`. */
function eachCard(part: string, cards: CardsToAnswer, vocabulary: AnswerVocabulary): readonly string[] {
  const { card, done, unchanged, points, left, and } = vocabulary;
  const words = wordsOf(part);
  const said: string[] = [];
  for (let at = 0; at < words.length; ) {
    const start = at;
    if (card.includes(plainly(words[at] ?? ''))) at += 1;
    const name = words[at] ?? '';
    const isParted = SIGN.test(words[at + 1] ?? '');
    const amount = words[at + (isParted ? 2 : 1)] ?? '';
    const isCard = isParted ? cards.positionOf(name) !== undefined : callsCard(name, cards);
    if (!isCard || !(isNumber(amount) || [...done, ...unchanged].includes(plainly(amount)))) return [part];
    at += isParted ? 3 : 2;
    said.push(words.slice(start, at).join(' '));
    while ([...points, ...left, ...and].includes(plainly(words[at] ?? ''))) at += 1;
  }
  return said;
}

/** Whether the part begins with a card. A number alone is none. */
function namesCard(part: string, cards: CardsToAnswer, { card }: AnswerVocabulary): boolean {
  const [first = '', second] = wordsOf(part);
  if (part.includes(':') || card.includes(first.toLowerCase())) return true;
  return second !== undefined && callsCard(first, cards);
}
