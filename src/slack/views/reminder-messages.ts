/** The one reminder of a day, and the last call before a sprint closes. Only the member sees them. */
import type { PromptContent } from '../../app/posting/message-content.ts';
import { plainTyped } from '../../words/typed-text.ts';
import { context, lead, section } from './block-builders.ts';
import { dailyPromptMessage, openCardBlocks, promptButtons, wordsHint } from './daily-prompt-message.ts';
import { type MessageView, messageView } from './message-view.ts';
import { closingWords } from './sprint-words.ts';

/** When the prompt has been met meanwhile, it shows how. */
export function reminderMessage(prompt: PromptContent): MessageView {
  if (prompt.state !== 'asked') return dailyPromptMessage(prompt);
  return messageView([
    lead(`Reminder: what is left on your cards in ${plainTyped(prompt.sprint.name)}?`),
    ...openCardBlocks('', prompt.cards),
    promptButtons(prompt),
    context(`${wordsHint(prompt.cards.length)} There is no second reminder today.`),
  ]);
}

/** When the prompt has been met meanwhile, it shows how. */
export function lastCallMessage(prompt: PromptContent): MessageView {
  if (prompt.state !== 'asked') return dailyPromptMessage(prompt);
  return messageView([
    lead(`Last call: ${plainTyped(prompt.sprint.name)} closes on ${closingWords(prompt)}`),
    section('What is still left on your cards? Without an answer they count as they stand here:'),
    ...openCardBlocks('', prompt.cards),
    promptButtons(prompt),
    context(wordsHint(prompt.cards.length)),
  ]);
}
