/** The form that asks for the range of another sprint than the next one, or with people away. */
import type { ModalView } from '@slack/types';
import type { RangeAdvice } from '../../app/advice/advice.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { encodeContext } from '../form-contexts.ts';
import { formId } from '../ids.ts';
import { section } from './block-builders.ts';
import { dateField, textField } from './form-inputs.ts';
import { formView, withReplyTo } from './form-view.ts';

export const RANGE_FIELDS = {
  startsOn: 'startsOn',
  endsOn: 'endsOn',
  awayDays: 'awayDays',
} as const;

/** In the plan form as well. */
export function awayDaysField(field: string, initial: string) {
  return textField({
    field,
    label: say('away-days-label'),
    hint: say('away-days-hint'),
    optional: true,
    maxLength: 10,
    initial,
  });
}

export function rangeFormView(
  { team, coming }: Pick<RangeAdvice, 'team' | 'coming'>,
  replyTo?: string,
): ModalView {
  const fields = RANGE_FIELDS;
  const frame = {
    callbackId: formId('range'),
    title: say('range-form-title'),
    submit: say('range-form-submit'),
    context: encodeContext(withReplyTo({ teamId: team.id }, replyTo)),
  };
  return formView(frame, [
    section(mrkdwn('range-form-intro', { team: team.name })),
    dateField({ field: fields.startsOn, label: say('range-form-first-day'), initial: coming.startsOn }),
    dateField({ field: fields.endsOn, label: say('range-form-last-day'), initial: coming.endsOn }),
    awayDaysField(fields.awayDays, coming.awayDays === undefined ? '' : String(coming.awayDays)),
  ]);
}
