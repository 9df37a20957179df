/** Asks before a sprint is closed early. */
import type { ModalView } from '@slack/types';
import type { CardLine } from '../../app/cards/card-line.ts';
import type { SprintHeading } from '../../app/team/team.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { closingTime } from '../../words/sprint.ts';
import { encodeContext } from '../form-contexts.ts';
import { formId } from '../ids.ts';
import { section } from './block-builders.ts';
import { formView, withReplyTo } from './form-view.ts';

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
    title: say('close-title'),
    submit: say('close-submit'),
    leave: say('close-leave'),
    context: encodeContext(withReplyTo({ sprintId: sprint.id }, replyTo)),
  };
  const finished = mrkdwn('close-finished', {
    finished: totals.committedFinishedPoints,
    committed: totals.commitmentPoints,
  });
  const rest =
    open === 0
      ? mrkdwn('close-all-finished')
      : mrkdwn('close-open', { cards: open, left: totals.openLeftPoints });
  return formView(frame, [
    section(mrkdwn('close-when', { sprint: sprint.name, closes: closingTime(heading) })),
    section(`${finished} ${rest}`),
    section(mrkdwn('close-what-follows')),
  ]);
}
