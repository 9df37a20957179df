/** Understands that of some cards something else is said than of all others: `no change except berth-7: 3`. */
import { withoutEnds } from '../cards/card-link.ts';
import type { AnswerVocabulary } from './answer-vocabulary.ts';
import { SIGN } from './put-in-order.ts';
import { plainly, wordsOf } from './typed-words.ts';
import { type CardsToAnswer, callsCard } from './understand-part.ts';
import { aboutTheDay, isAboutCards, withoutNames } from './what-is-told.ts';

const COMMAS = new Set(' ,');

/** @returns `berth-7: 3; rest same` for `no change except berth-7: 3` */
export function withRestSaid(text: string, cards: CardsToAnswer, vocabulary: AnswerVocabulary): string {
  const words = text.split(' ');
  for (const [i] of words.entries()) {
    const length = [2, 1].find((count) =>
      vocabulary.except.includes(plainly(words.slice(i, i + count).join(' '))),
    );
    if (length === undefined) continue;
    const said = saidOfAll(withoutEnds(words.slice(0, i).join(' '), COMMAS, 'both ends'), vocabulary);
    const some = words.slice(i + length).join(' ');
    const saysAmount = isAboutCards(withoutNames(some, cards), cards, vocabulary);
    return said !== undefined && saysAmount && beginsWithCard(some, cards, vocabulary)
      ? `${some}; ${vocabulary.rest[0]} ${said}`
      : text;
  }
  return text;
}

/** `same` or `done`. */
function saidOfAll(text: string, vocabulary: AnswerVocabulary): string | undefined {
  const { unchanged, done, every, has, filler } = vocabulary;
  if (aboutTheDay(text, vocabulary)?.kind === 'unchanged') return unchanged[0];
  const plain = plainly(text);
  const all = every.find((phrase) => plain.startsWith(`${phrase} `));
  if (all === undefined) return undefined;
  const between = new Set([...has, ...filler]);
  const said = wordsOf(plain.slice(all.length))
    .filter((word) => !between.has(word))
    .join(' ');
  return done.includes(said) ? done[0] : unchanged.includes(said) ? unchanged[0] : undefined;
}

function beginsWithCard(text: string, cards: CardsToAnswer, { card, the }: AnswerVocabulary): boolean {
  const words = wordsOf(text.replaceAll(',', ' ')).filter((word, i) => i > 0 || !the.includes(plainly(word)));
  const [first = '', second = ''] = words;
  const isMarked = card.includes(plainly(first)) || SIGN.test(second);
  return callsCard(first, cards) || (isMarked && words.some((word) => cards.positionOf(word) !== undefined));
}
