/**
 * The cards that explain a verdict: those that grew or shrank, were pulled in, were dropped, were left
 * open. No owner is named.
 */
import type { CardLine } from '../../app/cards/card-line.ts';
import type { SaidOfCard, VerdictContent } from '../../app/closing/verdict-content.ts';
import { snap } from '../../sprint/scale.ts';
import { cardGrowth, cardProgress, linkedCardName } from '../../words/cards.ts';
import { changesForTeam, planChangedTitle, planChangeLines } from '../../words/plan-changes.ts';
import { mrkdwn } from '../../words/say.ts';
import { bold } from './block-builders.ts';
import { type LineList, lineList } from './line-sections.ts';

interface CardList {
  readonly title: string;
  readonly lines: readonly string[];
}

export function verdictCardLists(verdict: VerdictContent): LineList[] {
  const plan = changesForTeam(verdict);
  if (plan.planChanges.length === 0) return listsOfCards(verdict);
  const changes = lineList(bold(planChangedTitle(plan)), planChangeLines(plan), (count) =>
    mrkdwn('plan-changes-more', { changes: count }),
  );
  return [...listsOfCards(verdict), changes];
}

function listsOfCards(verdict: VerdictContent): LineList[] {
  return cardLists(verdict)
    .filter(({ lines }) => lines.length > 0)
    .map(({ title, lines }) =>
      lineList(
        bold(title),
        lines.map((line) => `• ${line}`),
        (cards) => mrkdwn('verdict-more-cards', { cards }),
      ),
    );
}

function saidLine({ cardId, day, about, note }: SaidOfCard, cards: readonly CardLine[]): string[] {
  const card = cards.find((one) => one.cardId === cardId);
  return card ? [mrkdwn('verdict-said', { card: linkedCardName(card), day, about, note })] : [];
}

function cardLists({ cards, dropReasons, said, scale }: VerdictContent): CardList[] {
  const change = ({ surprisePoints, driftPoints }: CardLine): number =>
    Math.abs(surprisePoints) + Math.abs(driftPoints);
  const changed = cards.filter((card) => change(card) > 0).sort((a, b) => change(b) - change(a));
  const named = (card: CardLine) => ({ card: linkedCardName(card), estimate: card.estimatePoints });
  return [
    {
      title: mrkdwn('verdict-changed-title'),
      lines: changed.map((card) =>
        mrkdwn('verdict-changed-card', {
          ...named(card),
          size: card.workedPoints + card.leftPoints,
          is:
            snap(card.workedPoints + card.leftPoints, scale) === card.estimatePoints
              ? 'on-scale'
              : 'off-scale',
          growth: cardGrowth(card),
        }),
      ),
    },
    { title: mrkdwn('verdict-said-title'), lines: said.flatMap((one) => saidLine(one, cards)) },
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
