/** When the bot itself is at fault, or slow: never silence. */
import type { ModalView } from '@slack/types';
import { code, plain, section } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';

function troubleWords(errorId: string): string {
  return `Something went wrong on our side, and nothing was recorded. Please try again. If it happens again, give whoever runs this bot the code ${code(errorId)}.`;
}

export function troubleMessage(errorId: string): MessageView {
  return messageView([section(troubleWords(errorId))]);
}

export function troubleFormView(errorId: string): ModalView {
  return notice('Something went wrong', [section(troubleWords(errorId))]);
}

/** Stands in the place of a form whose work takes longer than the platform waits. */
export function workingFormView(): ModalView {
  return notice('Still working', [
    section('This takes a moment longer than usual. You get a message when it is done.'),
  ]);
}

/** Shows a message in the place of a form. */
export function doneFormView(message: MessageView): ModalView {
  return notice('Done', message.blocks);
}

/** Shows a refusal in the place of a form. */
export function refusedFormView(message: MessageView): ModalView {
  return notice('Not done', message.blocks);
}

function notice(title: string, blocks: ModalView['blocks']): ModalView {
  return { type: 'modal', title: plain(title, 24), close: plain('Close', 24), blocks };
}
