/** Asks before a sprint is closed early. */
import type { ModalView } from '@slack/types';
import type { CardLine } from '../../app/cards/card-line.ts';
import type { SprintHeading } from '../../app/posting/message-content.ts';
import { formatPoints, formatPointsWithUnit } from '../../sprint/points.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import { typed } from '../../words/typed-text.ts';
import { encodeContext } from '../form-contexts.ts';
import { formId } from '../ids.ts';
import { section } from './block-builders.ts';
import { formView, withReplyTo } from './form-view.ts';
import { closingWords, counted } from './sprint-words.ts';

export interface SprintToClose {
  readonly heading: SprintHeading;
  readonly cards: readonly CardLine[];
  readonly summary: SprintSummary;
}

export function closeFormView({ heading, cards, summary }: SprintToClose, replyTo?: string): ModalView {
  const { sprint } = heading;
  const { totals } = summary;
  const open = cards.filter(({ state }) => state === 'open').length;
  const frame = {
    callbackId: formId('close'),
    title: 'Close the sprint now?',
    submit: 'Close now',
    leave: 'Keep it open',
    context: encodeContext(withReplyTo({ sprintId: sprint.id }, replyTo)),
  };
  const openWords =
    open === 0
      ? 'Every card is finished or dropped.'
      : `${counted(open, 'card')} with ${formatPointsWithUnit(totals.openLeftPoints)} left will count as not finished.`;
  return formView(frame, [
    section(`${typed(sprint.name)} would close by itself on ${closingWords(heading)}.`),
    section(
      `Finished so far: ${formatPoints(totals.committedFinishedPoints)} of ${formatPointsWithUnit(totals.commitmentPoints)} committed. ${openWords}`,
    ),
    section('The verdict is posted in the channel. A facilitator can reopen the sprint for 24 hours.'),
  ]);
}
