/** The one door through which posts get their words: what a post says as data → text and blocks. */
import type { MessageContent } from '../../app/posting/message-content.ts';
import { sharedAdviceMessage } from './advice-message.ts';
import { cancelledMessage } from './cancelled-message.ts';
import type { ChartImage } from './chart-image.ts';
import { dailyPromptMessage } from './daily-prompt-message.ts';
import type { MessageView } from './message-view.ts';
import { ownerNeededMessage } from './owner-needed-message.ts';
import { planMessage } from './plan-message.ts';
import { lastCallMessage, reminderMessage } from './reminder-messages.ts';
import { sharedStatusMessage } from './status-message.ts';
import { teamSetUpMessage } from './team-set-up-message.ts';
import { verdictMessage } from './verdict-message.ts';

/** @param chart the chart of a verdict, a status or an answer, once it has been uploaded. */
export function postMessage(content: MessageContent, chart?: ChartImage): MessageView {
  switch (content.kind) {
    case 'daily-prompt':
      return dailyPromptMessage(content.prompt);
    case 'reminder':
      return reminderMessage(content.prompt);
    case 'last-call':
      return lastCallMessage(content.prompt);
    case 'team-set-up':
      return teamSetUpMessage(content);
    case 'plan':
      return planMessage(content.plan);
    case 'verdict':
      return verdictMessage(content.verdict, chart);
    case 'owner-needed':
      return ownerNeededMessage(content);
    case 'shared-status':
      return sharedStatusMessage(content.status, content.byUserId, chart);
    case 'shared-advice':
      return sharedAdviceMessage(content.advice, content.byUserId, chart);
    case 'cancelled':
      return cancelledMessage(content, chart);
  }
}
