/** Replies after a sprint was changed or shared, to the person who did it. The channel gets its own post. */

import type { VerdictContent } from '../../app/closing/verdict-content.ts';
import type { SprintHeading } from '../../app/team/team.ts';
import { mrkdwn } from '../../words/say.ts';
import { momentOf } from '../../words/sprint.ts';
import { verdictSentence } from '../../words/verdict.ts';
import { section } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';

function reply(...sentences: string[]): MessageView {
  return messageView(sentences.map(section));
}

export function sprintClosedReply({ sprint, summary }: VerdictContent): MessageView {
  const verdict = verdictSentence(summary);
  return reply(mrkdwn('closed-reply', { sprint: sprint.name, verdict }), mrkdwn('closed-reply-next'));
}

export function sprintCancelledReply({ sprint }: SprintHeading): MessageView {
  return reply(mrkdwn('cancelled-reply', { sprint: sprint.name }), mrkdwn('cancelled-reply-next'));
}

export function sprintReopenedReply({
  heading: { sprint, team },
  until,
}: {
  readonly heading: SprintHeading;
  readonly until: Date;
}): MessageView {
  return reply(
    mrkdwn('reopened-reply', { sprint: sprint.name, moment: momentOf(until, team.timeZone) }),
    mrkdwn('reopened-reply-next', { day: sprint.endsOn }),
  );
}

export function statusSharedReply(): MessageView {
  return reply(mrkdwn('status-shared-reply'));
}

export function adviceSharedReply(): MessageView {
  return reply(mrkdwn('advice-shared-reply'));
}
