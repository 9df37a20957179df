/** Confirms what a member said, where the daily prompt itself is not in view. */
import type { PromptContent } from '../../app/posting/message-content.ts';
import { dailyPromptMessage } from './daily-prompt-message.ts';
import type { MessageView } from './message-view.ts';

/** The same words as in the prompt, so that one learns to read them once. */
export function recordedMessage(prompt: PromptContent): MessageView {
  return dailyPromptMessage(prompt);
}
