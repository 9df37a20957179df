/** When the bot itself is at fault, or slow: never silence. */
import type { ModalView } from '@slack/types';
import { code, plain, section } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';

/** How far a request had got when something went wrong: what it wrote is kept, is not, or nobody knows (two ways). */
export type Kept = 'nothing' | 'unsettled' | 'uncertain' | 'kept';

/** @param codeWords the code as it is to be shown */
export function troubleWords(codeWords: string, kept: Kept): string {
  const operator = `give whoever runs this bot the code ${codeWords}.`;
  switch (kept) {
    case 'nothing':
      return `Something went wrong on our side, and nothing was recorded. Please try again. If it happens again, ${operator}`;
    case 'unsettled':
    case 'uncertain':
      return `Something went wrong on our side, and it is not certain whether this was recorded. Look first, then try again if it is missing. If it happens again, ${operator}`;
    case 'kept':
      return `This was recorded, but something went wrong on our side when it was to be shown. You need not do it again. If you miss something, ${operator}`;
  }
}

export function troubleMessage(errorId: string, kept: Kept): MessageView {
  return messageView([section(troubleWords(code(errorId), kept))]);
}

export function troubleFormView(errorId: string, kept: Kept): ModalView {
  const title = kept === 'kept' ? 'Recorded' : 'Something went wrong';
  return notice(title, [section(troubleWords(code(errorId), kept))]);
}

/** For a form that arrived twice: the first time it was carried out. */
export function sentTwiceMessage(): MessageView {
  return messageView([section('This form arrived twice. What it holds is recorded, once.')]);
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
