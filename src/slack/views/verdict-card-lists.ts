/**
 * The cards that explain a verdict: those that grew or shrank, were pulled in, were dropped, were left
 * open. No owner is named.
 */
import type { SectionBlock } from '@slack/types';
import type { CardLine } from '../../app/cards/card-line.ts';
import type { VerdictContent } from '../../app/closing/verdict-content.ts';
import { cardGrowth, cardName, cardProgress } from '../../words/cards.ts';
import { mrkdwn } from '../../words/say.ts';
import { bold } from './block-builders.ts';
import { lineSections } from './line-sections.ts';

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
      ...lineSections(
        bold(title),
        lines.map((line) => `• ${line}`),
        {
          maxSections: maxSections - blocks.length - forLaterLists,
          more: (cards) => mrkdwn('verdict-more-cards', { cards }),
        },
      ),
    );
  }
  return blocks;
}

function cardLists({ cards, dropReasons }: VerdictContent): CardList[] {
  const change = ({ surprisePoints, driftPoints }: CardLine): number =>
    Math.abs(surprisePoints) + Math.abs(driftPoints);
  const changed = cards.filter((card) => change(card) > 0).sort((a, b) => change(b) - change(a));
  const named = (card: CardLine) => ({ card: cardName(card), estimate: card.estimatePoints });
  return [
    {
      title: mrkdwn('verdict-changed-title'),
      lines: changed.map((card) =>
        mrkdwn('verdict-changed-card', {
          ...named(card),
          size: card.workedPoints + card.leftPoints,
          growth: cardGrowth(card),
        }),
      ),
    },
    {
      title: mrkdwn('verdict-pulled-in-title'),
      lines: cards
        .filter(({ origin }) => origin === 'pulled-in')
        .map((card) => mrkdwn('verdict-pulled-in-card', { ...named(card), progress: cardProgress(card) })),
    },
    {
      title: mrkdwn('verdict-dropped-title'),
      lines: cards
        .filter(({ state }) => state === 'dropped')
        .map((card) => {
          const reason = dropReasons.get(card.cardId)?.trim() ?? '';
          return reason === ''
            ? mrkdwn('verdict-dropped-card', named(card))
            : mrkdwn('verdict-dropped-card-reason', { ...named(card), reason });
        }),
    },
    {
      title: mrkdwn('verdict-open-title'),
      lines: cards
        .filter(({ state }) => state === 'open')
        .map((card) => mrkdwn('verdict-open-card', { ...named(card), progress: cardProgress(card) })),
    },
  ];
}
