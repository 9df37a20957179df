/** The one door through which posts get their words: what a post says as data → text and blocks. */
import type { ContentOf, MessageContent, PostKind } from '../../app/posting/post-kinds.ts';
import { Markup, mrkdwn } from '../../words/say.ts';
import { sharedAdviceMessage } from './advice-message.ts';
import { dailyPromptMessage, lastCallMessage, reminderMessage } from './answering/prompt-messages.ts';
import { type ChartImage, context } from './block-builders.ts';
import {
  cardsBlockedMessage,
  cardsDroppedMessage,
  cardsGivenMessage,
  ownerNeededMessage,
} from './cards/card-messages.ts';
import { digestMessage, watchWordMessage, weeklyLineMessage } from './digest-views.ts';
import { experimentQuestionMessage } from './experiment-views.ts';
import { goalQuestionMessage } from './goal-views.ts';
import { type MessageView, messageView } from './message-view.ts';
import { planMessage } from './planning/plan-messages.ts';
import { messagesRemovedMessage } from './privacy-message.ts';
import { importRemovedPost } from './removal-views.ts';
import { sharedRetroMessage } from './retro-message.ts';
import { cancelledMessage } from './sprint-change-views.ts';
import { sharedStatusMessage } from './status-message.ts';
import { guestWelcomeMessage } from './team/guest-messages.ts';
import {
  noFacilitatorMessage,
  roleEndedMessage,
  roleGivenMessage,
  takenOffMessage,
} from './team/role-message.ts';
import { teamChangedMessage } from './team/team-changed-message.ts';
import {
  teamEndedMessage,
  teamIdleMessage,
  teamMovedMessage,
  teamResumedMessage,
  teamSetUpMessage,
} from './team/team-messages.ts';
import { channelUnreachableMessage, memberUnreachableMessage } from './unreachable-messages.ts';
import { valueQuestionMessage } from './value-views.ts';
import { directVerdictMessage, verdictMessage } from './verdict-message.ts';
import { verdictCardsMessage, verdictNotesMessage, verdictNumbersMessage } from './verdict-thread.ts';

const VIEWS: { readonly [Kind in PostKind]: (content: ContentOf<Kind>, chart?: ChartImage) => MessageView } =
  {
    'daily-prompt': ({ prompt }) => dailyPromptMessage(prompt),
    reminder: ({ prompt }) => reminderMessage(prompt),
    'last-call': ({ prompt }) => lastCallMessage(prompt),
    'team-set-up': teamSetUpMessage,
    'team-changed': teamChangedMessage,
    'role-given': roleGivenMessage,
    'taken-off': takenOffMessage,
    'no-facilitator': noFacilitatorMessage,
    'role-ended': roleEndedMessage,
    'team-moved': teamMovedMessage,
    'messages-removed': messagesRemovedMessage,
    'team-ended': teamEndedMessage,
    'team-idle': teamIdleMessage,
    'team-resumed': teamResumedMessage,
    'import-removed': importRemovedPost,
    plan: ({ plan }) => planMessage(plan),
    'goal-question': goalQuestionMessage,
    'experiment-question': experimentQuestionMessage,
    'value-question': valueQuestionMessage,
    verdict: ({ verdict }, chart) => verdictMessage(verdict, chart),
    'direct-verdict': ({ verdict }, chart) => directVerdictMessage(verdict, chart),
    'verdict-numbers': ({ verdict }) => verdictNumbersMessage(verdict),
    'verdict-cards': ({ verdict }) => verdictCardsMessage(verdict),
    'verdict-notes': ({ verdict }) => verdictNotesMessage(verdict),
    'owner-needed': ownerNeededMessage,
    'guest-welcome': guestWelcomeMessage,
    'cards-given': cardsGivenMessage,
    'cards-blocked': cardsBlockedMessage,
    'cards-dropped': cardsDroppedMessage,
    digest: digestMessage,
    'watch-word': watchWordMessage,
    'weekly-line': weeklyLineMessage,
    'channel-unreachable': channelUnreachableMessage,
    'member-unreachable': memberUnreachableMessage,
    'shared-status': ({ status, byUserId }, chart) => sharedStatusMessage(status, byUserId, chart),
    'shared-retro': ({ retro, byUserId }) => sharedRetroMessage(retro, byUserId),
    'shared-advice': ({ advice, byUserId }, chart) => sharedAdviceMessage(advice, byUserId, chart),
    cancelled: cancelledMessage,
  };

/**
 * @param chart the chart of a verdict, a status or an answer, once it has been uploaded
 * @param replacedLink where the message that this one replaces can be read
 */
export function postMessage(content: MessageContent, chart?: ChartImage, replacedLink?: string): MessageView {
  const view = VIEWS[content.kind] as (content: MessageContent, chart?: ChartImage) => MessageView;
  const message = view(content, chart);
  return content.replaces ? replacing(message, replacedLink) : message;
}

/** Says so below what the message leads with, which a notification shows. */
function replacing({ blocks: [first, ...others] }: MessageView, link: string | undefined): MessageView {
  const note = link
    ? mrkdwn('message-replaces-linked', { link: new Markup(link) })
    : mrkdwn('message-replaces');
  return messageView([...(first ? [first] : []), context(note), ...others]);
}
