/** The form that asks for the range of another sprint than the next one, or with people away. */
import type { ModalView } from '@slack/types';
import type { RangeAdvice } from '../../app/advice/advice.ts';
import { formatPoints } from '../../sprint/points.ts';
import { typed } from '../../words/typed-text.ts';
import { encodeContext } from '../form-contexts.ts';
import { FIELDS, FORMS } from '../ids.ts';
import { section } from './block-builders.ts';
import { dateField, textField } from './form-inputs.ts';
import { formView, withReplyTo } from './form-view.ts';

/** In the plan form as well. */
export const AWAY_DAYS_FIELD = {
  label: 'Days off and away, all members together',
  hint: 'Each holiday counts once for every member. Leave empty if you don’t know.',
  optional: true,
  maxLength: 10,
} as const;

export function rangeFormView(
  { team, coming }: Pick<RangeAdvice, 'team' | 'coming'>,
  replyTo?: string,
): ModalView {
  const fields = FIELDS.range;
  const frame = {
    callbackId: FORMS.range,
    title: 'Commitment range',
    submit: 'Show the range',
    context: encodeContext(withReplyTo({ teamId: team.id }, replyTo)),
  };
  return formView(frame, [
    section(
      `How much should ${typed(team.name)} commit to? What past sprints achieved is scaled to the working time of this one.`,
    ),
    dateField({ field: fields.startsOn, label: 'First day', initial: coming.startsOn }),
    dateField({ field: fields.endsOn, label: 'Last day', initial: coming.endsOn }),
    textField({
      field: fields.awayDays,
      ...AWAY_DAYS_FIELD,
      initial: coming.awayDays === undefined ? '' : formatPoints(coming.awayDays),
    }),
  ]);
}
