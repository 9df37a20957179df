/** A card in words. */
import type { CardLine } from '../app/cards/card-line.ts';
import type { Form } from './language.ts';
import { people } from './people.ts';
import { Markup, markup, mrkdwn, say } from './say.ts';
import { escaped, mrkdwnOf, plainTyped, shortened } from './typed-text.ts';

/** In lists of cards; the notice to the facilitators says all of it. */
const BLOCKED_ON_MAX_LENGTH = 40;

type Named = Pick<CardLine, 'number' | 'key' | 'title'>;
type Linked = Named & Pick<CardLine, 'link'>;

/** `berth-3 Title`; the title alone when the card has no short name of the team's own and is called by its number. */
export function cardName({ number, key, title }: Named): string {
  const hasShortName = key !== '' && key !== String(number) && key !== `#${number}`;
  return hasShortName ? `${plainTyped(key)} ${plainTyped(title)}` : plainTyped(title);
}

/** The same, leading to the card's link where it has one. @param mostCharacters of the name */
export function linkedCardName(card: Linked, mostCharacters = Number.POSITIVE_INFINITY): string | Markup {
  const name = shortened(cardName(card), mostCharacters);
  return card.link === undefined ? name : new Markup(`<${escaped(card.link)}|${mrkdwnOf(name)}>`);
}

/**
 * A card of a sprint by its id; in mrkdwn it has its link. It can't be gone from its own sprint; without a name the sentence
 * would be odd, but not wrong.
 */
export function cardNameIn(
  form: Form,
  cardId: string,
  cards: readonly CardLine[],
  mostCharacters?: number,
): string | Markup {
  const card = cards.find((one) => one.cardId === cardId);
  if (!card) return '';
  return form === 'plain'
    ? shortened(cardName(card), mostCharacters ?? Number.POSITIVE_INFINITY)
    : linkedCardName(card, mostCharacters);
}

/** `@ana, @ben`, or `nobody yet` */
export function cardOwners(ownerIds: readonly string[]): Markup {
  return ownerIds.length === 0
    ? markup('cards-no-owner')
    : markup('cards-owners', { owners: people(ownerIds) });
}

/** `3 points left`, `finished`, `dropped` */
export function cardProgress({ state, leftPoints }: Pick<CardLine, 'state' | 'leftPoints'>): string {
  return state === 'open' ? say('cards-left', { points: leftPoints }) : say(`cards-${state}`);
}

/** `surprise work +2` and `estimate drift -1`; none when the card is as large as it was. */
export function cardGrowth({
  surprisePoints,
  driftPoints,
}: Pick<CardLine, 'surprisePoints' | 'driftPoints'>): string[] {
  return [
    ...(surprisePoints === 0 ? [] : [say('cards-surprise', { points: surprisePoints })]),
    ...(driftPoints === 0 ? [] : [say('cards-drift', { points: driftPoints })]),
  ];
}

/** `3. berth-3 Title: estimate 5, 3 points left, pulled in, surprise work +2 (@ana)`, in mrkdwn */
export function cardListLine(card: CardLine): string {
  const facts = [
    say('cards-estimate', { points: card.estimatePoints }),
    cardProgress(card),
    ...(card.origin === 'pulled-in' ? [say('cards-pulled-in')] : []),
    ...cardGrowth(card),
  ];
  const line = mrkdwn('cards-line', { ...numbered(card), facts, owners: cardOwners(card.ownerIds) });
  return withBlock(line, card);
}

/** A line about a card, and `. Blocked since Wed 4 Nov: waiting for the key` where it is; in mrkdwn */
export function withBlock(line: string, { blocked }: Pick<CardLine, 'blocked'>): string {
  if (blocked === undefined) return line;
  const { since, on } = blocked;
  const words =
    on === ''
      ? mrkdwn('cards-blocked-unsaid', { since })
      : mrkdwn('cards-blocked', { since, on: shortened(on, BLOCKED_ON_MAX_LENGTH) });
  return `${line}. ${words}`;
}

/** `3. berth-3 Title: 5 points (@ana)`, in mrkdwn */
export function plannedCardLine(
  card: Linked & { readonly estimatePoints: number; readonly ownerIds: readonly string[] },
): string {
  const owners = cardOwners(card.ownerIds);
  return mrkdwn('cards-planned-line', { ...numbered(card), points: card.estimatePoints, owners });
}

/** What messages about one card name it by. */
export function numbered(card: Linked): { number: string; card: string | Markup } {
  return { number: String(card.number), card: linkedCardName(card) };
}

/** The last line of a list of cards that is cut off. @param from number of the first card left out */
export function moreCardsFrom(cards: number, from: number | undefined): string {
  return mrkdwn('cards-more-from', { cards, from: String(from ?? '') });
}
