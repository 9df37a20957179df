/** The frame of a form. */
import type { ModalView } from '@slack/types';
import { say } from '../../words/say.ts';
import { plain } from './block-builders.ts';

const TITLE_MAX_LENGTH = 24;
const BLOCKS_MAX = 100;

export interface FormFrame {
  readonly callbackId: string;
  readonly title: string;
  readonly submit: string;
  /** What the button that leaves without doing anything says. */
  readonly leave?: string;
  /** `encodeContext(…)` */
  readonly context: string;
}

/** @throws RangeError when there are more blocks than a form may have: the view must budget. */
export function formView(frame: FormFrame, blocks: ModalView['blocks']): ModalView {
  if (blocks.length > BLOCKS_MAX) throw new RangeError(`${blocks.length} blocks are too many for a form`);
  return {
    type: 'modal',
    callback_id: frame.callbackId,
    title: plain(frame.title, TITLE_MAX_LENGTH),
    submit: plain(frame.submit, TITLE_MAX_LENGTH),
    close: plain(frame.leave ?? say('form-cancel'), TITLE_MAX_LENGTH),
    private_metadata: frame.context,
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

/** Leaves a key out when there is no value for it. */
export function withReplyTo<T extends object>(
  context: T,
  replyTo: string | undefined,
): T & { replyTo?: string } {
  return replyTo === undefined ? context : { ...context, replyTo };
}
