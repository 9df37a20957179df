/** Says in the channel that a sprint was cancelled, and what had been done in it. */
import type { MessageContent } from '../../app/posting/post-kinds.ts';
import { person } from '../../words/people.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { type ChartImage, chartBlocks, lead, section } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';
import { ratioBlocks } from './ratio-blocks.ts';
import { verdictCardLists } from './verdict-card-lists.ts';

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
    ...ratioBlocks(verdict.summary),
    ...verdictCardLists(verdict),
    section(mrkdwn('verdict-next-plan')),
  ]);
}
