/** Asks before a sprint is cancelled. */
import type { ModalView } from '@slack/types';
import type { SprintHeading } from '../../app/team/team.ts';
import { mrkdwn, say } from '../../words/say.ts';
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
    title: say('cancel-title'),
    submit: say('cancel-submit'),
    leave: say('cancel-leave'),
    context: encodeContext(withReplyTo({ sprintId: heading.sprint.id }, replyTo)),
  };
  return formView(frame, [
    section(mrkdwn('cancel-what-follows', { sprint: heading.sprint.name })),
    textField({
      field: CANCEL_FIELDS.reason,
      label: say('cancel-reason'),
      hint: say('cancel-reason-hint'),
      optional: true,
      maxLength: REASON_MAX_LENGTH,
    }),
  ]);
}
