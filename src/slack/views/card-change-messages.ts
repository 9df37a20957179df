/** Replies after a card was pulled in, dropped, taken or reopened. */
import type { CardChange } from '../../app/cards/change-cards.ts';
import type { PulledCard } from '../../app/cards/pull-card.ts';
import { formatPercent } from '../../sprint/percent.ts';
import { formatPointsWithUnit } from '../../sprint/points.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import { typed } from '../../words/typed-text.ts';
import { COMMAND } from '../ids.ts';
import { code, section } from './block-builders.ts';
import { cardName, leftWords, ownerWords } from './card-words.ts';
import { type MessageView, messageView } from './message-view.ts';
import { pulledCardWords } from './pull-in-words.ts';

export function pulledMessage({ heading, card, summary, check }: PulledCard): MessageView {
  const { pulledInPoints } = summary.totals;
  const { pullInRatio } = summary.ratios;
  const share = isDefined(pullInRatio) ? `, ${formatPercent(pullInRatio)} of the commitment` : '';
  const nobody =
    card.ownerIds.length === 0
      ? ` Nobody is asked about it until somebody takes it: ${code(`${COMMAND} take ${card.number}`)}.`
      : '';
  return messageView([
    section(
      `Pulled into ${typed(heading.sprint.name)} as card ${card.number}: ${cardName(card)}, ${formatPointsWithUnit(card.estimatePoints)} (${ownerWords(card.ownerIds)}).`,
    ),
    section(`Pulled-in work is now ${formatPointsWithUnit(pulledInPoints)}${share}.${nobody}`),
    section(pulledCardWords(check)),
  ]);
}

export function droppedMessage({ heading, card }: CardChange, reason = ''): MessageView {
  const why = reason.trim() === '' ? '' : ` Reason: ${typed(reason)}`;
  const part = card.origin === 'planned' ? 'commitment' : 'pulled-in work';
  return messageView([
    section(`Dropped from ${typed(heading.sprint.name)}: card ${card.number}, ${cardName(card)}.${why}`),
    section(
      `It keeps its ${formatPointsWithUnit(card.estimatePoints)} in the ${part} and counts as not finished.`,
    ),
  ]);
}

export function takenMessage({ heading, card }: CardChange): MessageView {
  return messageView([
    section(
      `You now own card ${card.number} of ${typed(heading.sprint.name)}, ${cardName(card)}: ${leftWords(card.leftPoints)} (${ownerWords(card.ownerIds)}).`,
    ),
    section(`You will be asked about it in the daily prompt. To answer now: ${code(`${COMMAND} answer`)}.`),
  ]);
}

export function reopenedCardMessage({ heading, card }: CardChange): MessageView {
  return messageView([
    section(`Card ${card.number} of ${typed(heading.sprint.name)}, ${cardName(card)}, is open again.`),
    section(`Say what is left on it: ${code(`${COMMAND} answer`)}. Until then nothing counts as left.`),
  ]);
}
