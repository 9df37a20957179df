/** Parts an answer in words: each part says something of one card, or the same of several. */
import type { AnswerVocabulary } from './answer-vocabulary.ts';
import { extraInOrder, type Kind, SIGN } from './put-in-order.ts';
import { isNumber, plainly, SIGNED_NUMBER, wordsOf } from './typed-words.ts';
import { type CardsToAnswer, callsCard, type Unclear } from './understand-part.ts';

/** `2,5` may be two and a half, or 2 and 5. A space, as in `2, 5`, or a name, as in `2: 3,5`, settles it. */
const UNSETTLED_COMMA = /(?<=\d),(?=5(?!\s*:|[\d.½]))/;
/** No slash between two numbers, `3 / 5`, and no comma of thousands. */
const SETTLED_SEPARATOR = /[;\n\r]+|\s\|\s|\s\/\s(?!\d)|,(?!5(?!\s*:|[\d.½])|\d{3}(?!\d))|(?<!\d),/;
/** A number with a decimal comma, whatever follows. */
const DECIMAL_COMMA = /^(\d+),(\d+)(?![\d.½])/;

/** Whether it calls one of the cards that the prompt listed. */
export function isOwn(reference: string, { count, positionOf }: CardsToAnswer): boolean {
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
export function splitParts(
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
    for (const part of some
      .map((text) => withoutBusy(text, cards, vocabulary))
      .filter((text) => text !== '')) {
      const before = parts.at(-1);
      const words = extraInOrder(wordsOf(part), vocabulary);
      const [more, amount = ''] = extraInOrder(wordsOf(before ?? ''), vocabulary);
      const open =
        before !== undefined && isAmount(words, vocabulary)
          ? cardLeftOpen(extraBehindCard(before, vocabulary), cards, vocabulary)
          : undefined;
      const isFirstMore = parts.length === 1 && isMore(more) && SIGNED_NUMBER.test(amount);
      if (open !== undefined) parts[parts.length - 1] = withAmount(open, words, isMore);
      else if (isFirstMore) parts[0] = `${part} ${before}`;
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

/** `berth-7 : 3 worked 2` of `berth-7 worked 2` and `3`. */
function withAmount(
  open: string,
  amount: readonly string[],
  isMore: (word: string | undefined) => boolean,
): string {
  const words = wordsOf(open);
  const moreAt = words.findIndex(isMore);
  const name = moreAt < 0 ? words : words.slice(0, moreAt);
  return [...name, ':', ...amount, ...words.slice(name.length)].join(' ');
}

/** `berth-7 worked 2` of `worked 2 on berth-7`. */
function extraBehindCard(text: string, { worked, surprise, about }: AnswerVocabulary): string {
  const words = wordsOf(text);
  const [extra = '', amount = '', on = '', ...card] = words;
  const isAbout = [...worked, ...surprise].includes(plainly(extra)) && about.includes(plainly(on));
  return isAbout && isNumber(amount) ? [...card, extra, amount].join(' ') : text;
}

/** `berth-7` of `working on berth-7`. */
function withoutBusy(text: string, cards: CardsToAnswer, { busy, card, filler }: AnswerVocabulary): string {
  const words = wordsOf(text);
  const from = words.findIndex((word) => !filler.includes(plainly(word)));
  const count = [2, 1].find((length) => busy.includes(plainly(words.slice(from, from + length).join(' '))));
  if (count === undefined) return text.trim();
  const rest = words.slice(from + count);
  const isCard = callsCard(rest[0] ?? '', cards) || card.includes(plainly(rest[0] ?? ''));
  return isCard ? rest.join(' ') : text.trim();
}

/** `3 left`, `still 3 worked 2` */
function isAmount(words: readonly string[], vocabulary: AnswerVocabulary): boolean {
  const { filler, guess, left, points, has, worked, surprise } = vocabulary;
  const besides = new Set([filler, guess, left, points, has].flat());
  const [amount = '', more] = words.filter((word) => !besides.has(plainly(word)));
  return isNumber(amount) && (more === undefined || [...worked, ...surprise].includes(plainly(more)));
}

/**
 * What the card is called by of which no amount is said: `berth-7` of `berth-7 in progress` and of `berth-7 is not done`,
 * `berth-7 worked 2`. Undefined: something is said of it, or the card doesn't come first.
 */
function cardLeftOpen(part: string, cards: CardsToAnswer, vocabulary: AnswerVocabulary): string | undefined {
  const isAny = (word: string | undefined, ...kinds: readonly Kind[]): boolean =>
    word !== undefined && kinds.some((kind) => vocabulary[kind].includes(plainly(word)));
  const words = wordsOf(part);
  const from = words.findIndex((word) => cards.positionOf(word) !== undefined || !isAny(word, 'filler'));
  const isMarked = isAny(words[from], 'card');
  const [name = '', ...more] = words.slice(isMarked ? from + 1 : from);
  const position = cards.positionOf(name);
  if (position === undefined || !(isMarked || callsCard(name, cards))) return undefined;
  const told = more.filter((word) => !SIGN.test(word) && cards.positionOf(word) !== position);
  if (isAny(told[0], 'worked', 'surprise'))
    return [...words.slice(0, words.indexOf(name) + 1), ...told].join(' ');
  const isNot = (word: string): boolean => isAny(word, 'not') || /n[’']t$/i.test(word);
  const saysMore = told.some(
    (word, i) =>
      /\d/.test(word) ||
      cards.positionOf(word) !== undefined ||
      isAny(word, 'nothing', 'blocked', 'note', 'worked', 'surprise', 'hope') ||
      (isAny(word, 'done') && !isNot(told[i - 1] ?? '')),
  );
  const said = ` ${plainly(told.join(' '))} `;
  const isUnchanged = vocabulary.unchanged.some((phrase) => said.includes(` ${phrase} `));
  return saysMore || isUnchanged ? undefined : words.slice(0, words.indexOf(name) + 1).join(' ');
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
  if (SIGN.test(second ?? '') && cards.positionOf(first) !== undefined) return true;
  return second !== undefined && callsCard(first, cards);
}
