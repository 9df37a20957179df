/** Tells a facilitator which open cards are nobody's. Must not say whose they were, nor why they no longer are. */
import type { CardLine } from '../../app/cards/card-line.ts';
import type { SprintHeading } from '../../app/posting/message-content.ts';
import { plainTyped } from '../../words/typed-text.ts';
import { COMMAND } from '../ids.ts';
import { code, context, lead, section } from './block-builders.ts';
import { cardListLine } from './card-words.ts';
import { lineSections } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';
import { counted } from './sprint-words.ts';

const CARD_SECTIONS_MAX = 30;

export function ownerNeededMessage({
  heading,
  cards,
}: {
  readonly heading: SprintHeading;
  readonly cards: readonly CardLine[];
}): MessageView {
  const name = plainTyped(heading.sprint.name);
  const [first] = cards;
  if (!first) return messageView([lead(`Every open card of ${name} has an owner again`)]);
  return messageView([
    lead(
      `${counted(cards.length, 'open card')} of ${name} ${cards.length === 1 ? 'needs' : 'need'} an owner`,
    ),
    ...lineSections('', cards.map(cardListLine), {
      maxSections: CARD_SECTIONS_MAX,
      more: (count, index) =>
        `… and ${counted(count, 'more card', 'more cards')}: ${code(`${COMMAND} cards ${cards[index]?.number}`)}`,
    }),
    section(
      `Nobody is asked about ${cards.length === 1 ? 'it' : 'them'}. Whoever takes a card over types ${code(`${COMMAND} take ${first.number}`)}; a card that is not wanted any more is dropped with ${code(`${COMMAND} drop ${first.number} reason`)}.`,
    ),
    context('What was said about these cards stays as it was.'),
  ]);
}
