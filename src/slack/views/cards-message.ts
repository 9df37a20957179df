/** The cards of a sprint, for one member of the team. */
import type { CardLine } from '../../app/cards/card-line.ts';
import type { SprintHeading } from '../../app/posting/message-content.ts';
import { formatPointsWithUnit } from '../../sprint/points.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import { plainTyped } from '../../words/typed-text.ts';
import { COMMAND } from '../ids.ts';
import { code, context, lead, section } from './block-builders.ts';
import { cardListLine } from './card-words.ts';
import { lineSections } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';
import { loadSentence } from './ratio-fields.ts';
import { counted } from './sprint-words.ts';

export interface CardList {
  readonly heading: SprintHeading;
  readonly cards: readonly CardLine[];
  readonly summary: SprintSummary;
}

const CARD_SECTIONS_MAX = 45;

/** @param from show the cards from this number on. */
export function cardsMessage({ heading, cards, summary }: CardList, from = 1): MessageView {
  const name = plainTyped(heading.sprint.name);
  const shown = cards.filter(({ number }) => number >= from);
  if (shown.length === 0) {
    const none =
      cards.length === 0
        ? `No card is in the sprint yet. Bring one in with ${code(`${COMMAND} pull`)}.`
        : `No card has the number ${from} or a higher one. See them all with ${code(`${COMMAND} cards`)}.`;
    return messageView([lead(`${name}: ${counted(cards.length, 'card')}`), section(none)]);
  }
  return messageView([
    lead(
      `${name}: ${counted(cards.length, 'card')}, ${formatPointsWithUnit(summary.totals.openLeftPoints)} left`,
    ),
    section(loadSentence(summary)),
    ...lineSections('', shown.map(cardListLine), {
      maxSections: CARD_SECTIONS_MAX,
      more: (count, index) =>
        `… and ${counted(count, 'more card', 'more cards')}: ${code(`${COMMAND} cards ${shown[index]?.number}`)}`,
    }),
    context(
      `Change one by its number: ${code(`${COMMAND} take 3`)}, ${code(`${COMMAND} drop 3 reason`)}, ${code(`${COMMAND} reopen 3`)}.`,
    ),
  ]);
}
