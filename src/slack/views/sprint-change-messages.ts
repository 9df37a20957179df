/** Replies after a sprint was changed or shared, to the one who did it. The channel gets its own post. */
import type { SprintHeading, VerdictContent } from '../../app/posting/message-content.ts';
import { mrkdwnOf, typed } from '../../words/typed-text.ts';
import { COMMAND } from '../ids.ts';
import { code, section } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';
import { instantWords } from './sprint-words.ts';
import { verdictSentence } from './verdict-words.ts';

export function sprintClosedReply({ sprint, summary }: VerdictContent): MessageView {
  return messageView([
    section(`${typed(sprint.name)} is closed: ${mrkdwnOf(verdictSentence(summary))}`),
    section(
      `The verdict goes to the team’s channel. If a number is wrong, reopen the sprint within 24 hours: ${code(`${COMMAND} reopen`)}.`,
    ),
  ]);
}

export function sprintCancelledReply({ sprint }: SprintHeading): MessageView {
  return messageView([
    section(
      `${typed(sprint.name)} is cancelled, and the channel is told. Its numbers are kept, and never count as history.`,
    ),
    section(`Plan the next one: ${code(`${COMMAND} plan`)}.`),
  ]);
}

export function sprintReopenedReply({
  heading,
  until,
}: {
  readonly heading: SprintHeading;
  readonly until: Date;
}): MessageView {
  return messageView([
    section(
      `${typed(heading.sprint.name)} is open again for corrections. It closes by itself on ${instantWords(until, heading.team.timeZone)}, or earlier with ${code(`${COMMAND} close`)}.`,
    ),
    section(`To correct an answer of a certain day: ${code(`${COMMAND} answer ${heading.sprint.endsOn}`)}.`),
  ]);
}

export function statusSharedReply(): MessageView {
  return messageView([section('The status goes to the team’s channel.')]);
}

export function adviceSharedReply(): MessageView {
  return messageView([section('The answer goes to the team’s channel.')]);
}
