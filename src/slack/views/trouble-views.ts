/** When the bot itself is at fault, or slow: never silence. */
import type { ModalView } from '@slack/types';
import { mrkdwn, say } from '../../words/say.ts';
import { plain, section } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';

/** How far a request had got when something went wrong: what it wrote is kept, is not, or is not known (two ways). */
export type Kept = 'nothing' | 'unsettled' | 'uncertain' | 'kept';

function messageOf(kept: Kept) {
  return kept === 'unsettled' ? 'trouble-uncertain' : (`trouble-${kept}` as const);
}

/** Plain text, for an error below a field. */
export function troubleWords(reference: string, kept: Kept): string {
  return say(messageOf(kept), { reference });
}

export function troubleMessage(reference: string, kept: Kept): MessageView {
  return messageView([section(mrkdwn(messageOf(kept), { reference }))]);
}

export function troubleFormView(reference: string, kept: Kept): ModalView {
  const title = kept === 'kept' ? say('trouble-kept-title') : say('trouble-title');
  return notice(title, [section(mrkdwn(messageOf(kept), { reference }))]);
}

/** For a form that arrived twice: the first one was carried out. */
export function sentTwiceMessage(): MessageView {
  return messageView([section(mrkdwn('trouble-sent-twice'))]);
}

/** In the place of a form whose work takes longer than the platform waits. */
export function workingFormView(): ModalView {
  return notice(say('trouble-working-title'), [section(mrkdwn('trouble-working'))]);
}

/** Shows a message in the place of a form. */
export function doneFormView(message: MessageView): ModalView {
  return notice(say('trouble-done-title'), message.blocks);
}

/** Shows a refusal in the place of a form. */
export function refusedFormView(message: MessageView): ModalView {
  return notice(say('trouble-refused-title'), message.blocks);
}

function notice(title: string, blocks: ModalView['blocks']): ModalView {
  return { type: 'modal', title: plain(title, 24), close: plain(say('form-close'), 24), blocks };
}
