/** Changes of a sprint: the forms that ask before it is closed early or cancelled, and the replies to who did it. */
import type { ModalView } from '@slack/types';
import type { CardLine } from '../../app/cards/card-line.ts';
import type { ReopenedSprint } from '../../app/closing/end-sprint.ts';
import type { VerdictContent } from '../../app/closing/verdict-content.ts';
import type { MessageContent } from '../../app/posting/post-kinds.ts';
import type { SprintHeading } from '../../app/team/team.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import { person } from '../../words/people.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { closingTime, momentOf } from '../../words/sprint.ts';
import { verdictSentence } from '../../words/verdict.ts';
import { type ChartImage, chartBlocks, lead, section } from './block-builders.ts';
import { textField } from './form-inputs.ts';
import { formView } from './form-view.ts';
import { type MessageView, messageView } from './message-view.ts';
import { ratioBlocks } from './ratio-blocks.ts';
import { verdictCardLists } from './verdict-card-lists.ts';
import { nextSprintWords } from './verdict-message.ts';

/** To the person who did it; the channel gets its own post. */
function reply(...sentences: string[]): MessageView {
  return messageView(sentences.map(section));
}

export function sprintClosedReply({ sprint, summary }: VerdictContent): MessageView {
  const verdict = verdictSentence(summary);
  return reply(mrkdwn('closed-reply', { sprint: sprint.name, verdict }), mrkdwn('closed-reply-next'));
}

export function sprintCancelledReply(verdict: VerdictContent): MessageView {
  return reply(mrkdwn('cancelled-reply', { sprint: verdict.sprint.name }), nextSprintWords(verdict));
}

export function sprintReopenedReply({
  heading: { sprint, team },
  until,
  lastDay,
}: ReopenedSprint): MessageView {
  return reply(
    mrkdwn('reopened-reply', { sprint: sprint.name, moment: momentOf(until, team.timeZone) }),
    mrkdwn('reopened-reply-next', { day: lastDay }),
  );
}

export function statusSharedReply(): MessageView {
  return reply(mrkdwn('status-shared-reply'));
}

export function adviceSharedReply(): MessageView {
  return reply(mrkdwn('advice-shared-reply'));
}

export const CANCEL_FIELDS = {
  reason: 'reason',
} as const;

const REASON_MAX_LENGTH = 300;

/** Asks before a sprint is cancelled. */
export function cancelFormView(
  { heading }: { readonly heading: SprintHeading },
  replyTo?: string,
): ModalView {
  const frame = {
    form: 'cancel',
    title: say('cancel-title'),
    submit: say('cancel-submit'),
    leave: say('cancel-leave'),
    context: { sprintId: heading.sprint.id },
    replyTo,
  };
  return formView(frame, [
    section(mrkdwn('cancel-what-follows', { sprint: heading.sprint.name })),
    textField({
      field: CANCEL_FIELDS.reason,
      label: say('cancel-reason'),
      hint: say('cancel-reason-hint'),
      optional: true,
      maxLength: REASON_MAX_LENGTH,
    }),
  ]);
}

interface SprintToClose {
  readonly heading: SprintHeading;
  readonly cards: readonly CardLine[];
  readonly summary: SprintSummary;
}

/** Asks before a sprint is closed early. */
export function closeFormView({ heading, cards, summary }: SprintToClose, replyTo?: string): ModalView {
  const { sprint } = heading;
  const { totals } = summary;
  const open = cards.filter(({ state }) => state === 'open').length;
  const frame = {
    form: 'close',
    title: say('close-title'),
    submit: say('close-submit'),
    leave: say('close-leave'),
    context: { sprintId: sprint.id },
    replyTo,
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

/** Says in the channel that a sprint was cancelled, and what had been done in it. */
export function cancelledMessage(
  { verdict, byUserId, reason }: Extract<MessageContent, { kind: 'cancelled' }>,
  chart?: ChartImage,
): MessageView {
  const by = { person: person(byUserId) };
  return messageView([
    lead(say('cancelled-title', { sprint: verdict.sprint.name })),
    section(
      reason.trim() === '' ? mrkdwn('cancelled-by', by) : mrkdwn('cancelled-by-reason', { ...by, reason }),
    ),
    section(mrkdwn('cancelled-counts')),
    ...chartBlocks(chart),
    ...ratioBlocks(verdict.summary, 'running'),
    ...verdictCardLists(verdict),
    section(nextSprintWords(verdict)),
  ]);
}
