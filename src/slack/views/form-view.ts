/** The frame of a form. */
import type { ModalView } from '@slack/types';
import { mrkdwn, say } from '../../words/say.ts';
import type { FormContext } from '../form-contexts.ts';
import { formId } from '../ids.ts';
import { actions, type ButtonOptions, button, plain, section } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';

const TITLE_MAX_LENGTH = 24;
const BLOCKS_MAX = 100;

interface FormFrame {
  /** Its name, as in the command's declaration. */
  readonly form: string;
  readonly title: string;
  readonly submit: string;
  /** What the button that leaves without doing anything says. */
  readonly leave?: string;
  /** What it is about. */
  readonly context: FormContext;
  /** Where the reply belongs; undefined: the person's own conversation. */
  readonly replyTo?: string | undefined;
}

/** @throws RangeError when there are more blocks than a form may have: the view must budget. */
export function formView(frame: FormFrame, blocks: ModalView['blocks']): ModalView {
  if (blocks.length > BLOCKS_MAX) throw new RangeError(`${blocks.length} blocks are too many for a form`);
  return {
    type: 'modal',
    callback_id: formId(frame.form),
    title: plain(frame.title, TITLE_MAX_LENGTH),
    submit: plain(frame.submit, TITLE_MAX_LENGTH),
    close: plain(frame.leave ?? say('form-cancel'), TITLE_MAX_LENGTH),
    private_metadata: JSON.stringify({ ...frame.context, replyTo: frame.replyTo }),
    blocks,
  };
}

/** Says something in place of a form, with nothing to send off. */
export function noticeView(title: string, blocks: ModalView['blocks']): ModalView {
  return {
    type: 'modal',
    title: plain(title, TITLE_MAX_LENGTH),
    close: plain(say('form-close'), TITLE_MAX_LENGTH),
    blocks,
  };
}

/** Where words asked for a form, which only a press can open. */
export function formButtonMessage(opener: ButtonOptions): MessageView {
  return messageView([section(mrkdwn('form-to-open')), actions([button(say('form-open-button'), opener)])]);
}
