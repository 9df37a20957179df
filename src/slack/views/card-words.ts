/** A card in words. Functions with `plain` in their name are for labels and options, the others for mrkdwn. */
import type { CardLine } from '../../app/cards/card-line.ts';
import { formatPointsWithUnit } from '../../sprint/points.ts';
import { mrkdwnOf, plainTyped } from '../../words/typed-text.ts';
import { signedPoints } from './sprint-words.ts';

type Named = Pick<CardLine, 'number' | 'key' | 'title'>;

/** `berth-7 Title`; the title alone when the card has no key of the team's own and is called by its number. */
export function plainCardName({ number, key, title }: Named): string {
  const hasOwnKey = key !== '' && key !== String(number) && key !== `#${number}`;
  return hasOwnKey ? `${plainTyped(key)} ${plainTyped(title)}` : plainTyped(title);
}

export function cardName(card: Named): string {
  return mrkdwnOf(plainCardName(card));
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
