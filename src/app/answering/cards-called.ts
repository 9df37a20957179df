/** Finds the card that a person means by what they call it, in an answer in words. */
import {
  cardOfKeyNumber,
  cardOfShortName,
  cardOfTitleWords,
  isOpenCard,
  type SprintCardState,
} from '../cards/card-line.ts';
import type { SprintCard } from '../team/team.ts';
import { isWordOfAnswers } from './answer-vocabulary.ts';
import type { CardsToAnswer } from './understand-part.ts';

/** What a bare number counts: the cards of the member's list, or those of the sprint by their numbers. */
export type Numbering = 'list' | 'sprint';

/**
 * The cards that somebody may speak of, and those among them in the order of their places: the person's own first, so that
 * naming another's gets the reason why it can't be answered.
 */
export function cardsToAnswer(
  states: readonly SprintCardState[],
  all: readonly SprintCard[],
  numbering: Numbering = 'list',
): { readonly cards: CardsToAnswer; readonly named: readonly SprintCard[] } {
  const own = states.map(({ card }) => card);
  const named = [...own, ...all.filter((card) => !own.includes(card))];
  const byNumber = (number: string): SprintCard | undefined =>
    numbering === 'sprint'
      ? all.find((card) => number === String(card.number))
      : own.find((_, i) => number === String(i + 1));
  const positionOf = (written: string): number | undefined => {
    const reference = written.replace(/^#(?=.)/, '');
    const found = byNumber(reference) ?? cardCalled(reference, own, named);
    return found && named.indexOf(found) + 1;
  };
  const open = states.flatMap((state, i) => (isOpenCard(state) ? [i + 1] : []));
  return { cards: { count: own.length, open, positionOf }, named };
}

/** By its short name, the number in that, or words of its title, in which the person's own come first. */
function cardCalled(
  reference: string,
  own: readonly SprintCard[],
  all: readonly SprintCard[],
): SprintCard | undefined {
  const words = reference.split(/\s+/);
  const byTitle = words.every(isWordOfAnswers)
    ? undefined
    : (cardOfTitleWords(own, words) ?? cardOfTitleWords(all, words));
  return cardOfShortName(all, reference) ?? cardOfKeyNumber(all, reference) ?? byTitle;
}
