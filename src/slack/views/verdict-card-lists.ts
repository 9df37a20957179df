/**
 * The cards that explain a verdict: those that grew or shrank, were pulled in, were dropped, were left
 * open. No owner is named.
 */
import type { SectionBlock } from '@slack/types';
import type { CardLine } from '../../app/cards/card-line.ts';
import type { VerdictContent } from '../../app/posting/message-content.ts';
import { formatPoints, formatPointsWithUnit } from '../../sprint/points.ts';
import { typed } from '../../words/typed-text.ts';
import { bold } from './block-builders.ts';
import { cardName, growthWords, leftWords, standingWords } from './card-words.ts';
import { lineSections } from './line-sections.ts';
import { counted } from './sprint-words.ts';

interface CardList {
  readonly title: string;
  readonly lines: readonly string[];
}

/** @param maxSections how many sections all lists together may use; four at least. */
export function verdictCardLists(verdict: VerdictContent, maxSections: number): SectionBlock[] {
  const lists = cardLists(verdict).filter(({ lines }) => lines.length > 0);
  const blocks: SectionBlock[] = [];
  for (const [i, { title, lines }] of lists.entries()) {
    const forLaterLists = lists.length - 1 - i;
    blocks.push(
      ...lineSections(bold(title), lines, {
        maxSections: maxSections - blocks.length - forLaterLists,
        more: (count) => `… and ${counted(count, 'more card', 'more cards')}, counted in the numbers above.`,
      }),
    );
  }
  return blocks;
}

function cardLists({ cards, dropReasons }: VerdictContent): CardList[] {
  const size = ({ surprisePoints, driftPoints }: CardLine): number =>
    Math.abs(surprisePoints) + Math.abs(driftPoints);
  const changed = cards.filter((card) => size(card) > 0).sort((a, b) => size(b) - size(a));
  return [
    {
      title: 'Cards that turned out larger or smaller',
      lines: changed.map(
        (card) =>
          `• ${cardName(card)}: estimate ${formatPoints(card.estimatePoints)}, true size ${formatPoints(card.workedPoints + card.leftPoints)} (${growthWords(card)})`,
      ),
    },
    {
      title: 'Pulled in after planning',
      lines: cards
        .filter(({ origin }) => origin === 'pulled-in')
        .map(
          (card) =>
            `• ${cardName(card)}: ${formatPointsWithUnit(card.estimatePoints)}, ${standingWords(card)}`,
        ),
    },
    {
      title: 'Dropped',
      lines: cards
        .filter(({ state }) => state === 'dropped')
        .map((card) => {
          const reason = dropReasons.get(card.cardId)?.trim() ?? '';
          const why = reason === '' ? '' : ` – ${typed(reason)}`;
          return `• ${cardName(card)}: ${formatPointsWithUnit(card.estimatePoints)}${why}`;
        }),
    },
    {
      title: 'Not finished',
      lines: cards
        .filter(({ state }) => state === 'open')
        .map(
          (card) =>
            `• ${cardName(card)}: ${leftWords(card.leftPoints)} (estimate ${formatPoints(card.estimatePoints)})`,
        ),
    },
  ];
}
