/** A card in words. Functions with `plain` in their name are for labels and options, the others for mrkdwn. */
import type { CardLine } from '../../app/cards/card-line.ts';
import { formatPoints, formatPointsWithUnit } from '../../sprint/points.ts';
import { mention, mrkdwnOf, plainTyped } from '../../words/typed-text.ts';
import { signedPoints } from './sprint-words.ts';

type Named = Pick<CardLine, 'number' | 'key' | 'title'>;

/** `LP-7 Title`; the title alone when the card has no key of the team's own and is called by its number. */
export function plainCardName({ number, key, title }: Named): string {
  const hasOwnKey = key !== '' && key !== String(number) && key !== `#${number}`;
  return hasOwnKey ? `${plainTyped(key)} ${plainTyped(title)}` : plainTyped(title);
}

export function cardName(card: Named): string {
  return mrkdwnOf(plainCardName(card));
}

/** `<@U1>, <@U2>`, or `nobody yet` */
export function ownerWords(ownerIds: readonly string[]): string {
  return ownerIds.length === 0 ? 'nobody yet' : ownerIds.map(mention).join(', ');
}

/** `surprise work +2, estimate drift −1`; empty when the card is as large as it was. */
export function growthWords({
  surprisePoints,
  driftPoints,
}: Pick<CardLine, 'surprisePoints' | 'driftPoints'>): string {
  const parts = [
    ...(surprisePoints === 0 ? [] : [`surprise work ${signedPoints(surprisePoints)}`]),
    ...(driftPoints === 0 ? [] : [`estimate drift ${signedPoints(driftPoints)}`]),
  ];
  return parts.join(', ');
}

/** `3 points left`, `nothing left` */
export function leftWords(leftPoints: number): string {
  return leftPoints === 0 ? 'nothing left' : `${formatPointsWithUnit(leftPoints)} left`;
}

/** `3 points left`, `finished`, `dropped` */
export function standingWords({ state, leftPoints }: Pick<CardLine, 'state' | 'leftPoints'>): string {
  return state === 'open' ? leftWords(leftPoints) : state;
}

/** `3. LP-7 Title: estimate 5, 3 points left, pulled in, surprise work +2 (<@U1>)` */
export function cardListLine(card: CardLine): string {
  const growth = growthWords(card);
  const facts = [
    `estimate ${formatPoints(card.estimatePoints)}`,
    standingWords(card),
    ...(card.origin === 'pulled-in' ? ['pulled in'] : []),
    ...(growth === '' ? [] : [growth]),
  ];
  return `${card.number}. ${cardName(card)}: ${facts.join(', ')} (${ownerWords(card.ownerIds)})`;
}
