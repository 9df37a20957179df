/** Replies after a sprint or a team was changed, to the one who did it. The channel gets its own post. */
import type { PlanContent, SprintHeading, VerdictContent } from '../../app/posting/message-content.ts';
import type { Team } from '../../app/team/team.ts';
import { formatPointsWithUnit } from '../../sprint/points.ts';
import { mrkdwnOf, typed } from '../../words/typed-text.ts';
import { COMMAND } from '../ids.ts';
import { code, section } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';
import { retentionSentence } from './retention-words.ts';
import { closingWords, counted, instantWords } from './sprint-words.ts';
import { verdictSentence } from './verdict-words.ts';
import { weekdayWords } from './weekday-words.ts';

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

export function planCommittedReply({ team, sprint, commitmentPoints, cards }: PlanContent): MessageView {
  return messageView([
    section(
      `${typed(sprint.name)} is planned: ${formatPointsWithUnit(commitmentPoints)} on ${counted(cards.length, 'card')}. The channel is told, and the sprint closes by itself on ${closingWords({ sprint, team })}.`,
    ),
    section(`See how it stands at any time: ${code(`${COMMAND} status`)}.`),
  ]);
}

export function teamSavedReply(team: Team, existed: boolean): MessageView {
  const next = existed
    ? `Scale, thresholds and closing time: ${code(`${COMMAND} setup measures`)}.`
    : `Next: plan the first sprint with ${code(`${COMMAND} plan`)}. Scale, thresholds and closing time have usual values; change them with ${code(`${COMMAND} setup measures`)}.`;
  return messageView([
    section(
      `${typed(team.name)} is ${existed ? 'changed' : 'set up'}. Members are asked at ${team.promptAt} (${typed(team.timeZone)}), ${weekdayWords(team.workingDays)}, while a sprint runs.`,
    ),
    section(next),
  ]);
}

export function measuresSavedReply(team: Team): MessageView {
  return messageView([
    section(
      `Saved for ${typed(team.name)}. Sprints close at ${team.closesAt}, the reminder comes ${counted(team.reminderAfterMinutes, 'minute')} after the prompt, and the scale is ${team.scale.join(', ')}.`,
    ),
    section(retentionSentence(team.retentionMonths)),
    section(
      'A sprint that is planned already keeps its closing time. The new thresholds count from the next closing on.',
    ),
  ]);
}

export function statusSharedReply(): MessageView {
  return messageView([section('The status goes to the team’s channel.')]);
}

export function adviceSharedReply(): MessageView {
  return messageView([section('The answer goes to the team’s channel.')]);
}
