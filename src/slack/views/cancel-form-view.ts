/** Asks before a sprint is cancelled. */
import type { ModalView } from '@slack/types';
import type { SprintHeading } from '../../app/posting/message-content.ts';
import { typed } from '../../words/typed-text.ts';
import { encodeContext } from '../form-contexts.ts';
import { formId } from '../ids.ts';
import { section } from './block-builders.ts';
import { textField } from './form-inputs.ts';
import { formView, withReplyTo } from './form-view.ts';

export const CANCEL_FIELDS = {
  reason: 'reason',
} as const;

const REASON_MAX_LENGTH = 300;

export function cancelFormView(
  { heading }: { readonly heading: SprintHeading },
  replyTo?: string,
): ModalView {
  const frame = {
    callbackId: formId('cancel'),
    title: 'Cancel the sprint?',
    submit: 'Cancel the sprint',
    leave: 'Keep it',
    context: encodeContext(withReplyTo({ sprintId: heading.sprint.id }, replyTo)),
  };
  return formView(frame, [
    section(
      `${typed(heading.sprint.name)} ends at once and without a verdict. Its numbers are kept, and never count as history. This cannot be undone.`,
    ),
    textField({
      field: CANCEL_FIELDS.reason,
      label: 'Reason',
      hint: 'The channel reads it.',
      optional: true,
      maxLength: REASON_MAX_LENGTH,
    }),
  ]);
}
