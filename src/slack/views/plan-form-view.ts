/** The form in which a sprint is planned. Its button leads to the preview; nothing is committed to before. */
import type { ModalView } from '@slack/types';
import type { PlanForm } from '../../app/planning/plan-form.ts';
import { typed } from '../../words/typed-text.ts';
import { encodeContext } from '../form-contexts.ts';
import { FIELDS, FORMS } from '../ids.ts';
import { section } from './block-builders.ts';
import { cardTextFields } from './card-text-fields.ts';
import { dateField, textField, timeField } from './form-inputs.ts';
import { formView, withReplyTo } from './form-view.ts';
import { AWAY_DAYS_FIELD } from './range-form-view.ts';
import { counted } from './sprint-words.ts';

const NAME_MAX_LENGTH = 80;
const GOAL_MAX_LENGTH = 500;

export function planFormView({ team, draft, leftOver }: PlanForm, replyTo?: string): ModalView {
  const fields = FIELDS.plan;
  const frame = {
    callbackId: FORMS.plan,
    title: 'Plan a sprint',
    submit: 'Preview',
    context: encodeContext(withReplyTo({ teamId: team.id }, replyTo)),
  };
  const carried =
    leftOver === 0
      ? ''
      : ` ${counted(leftOver, 'unfinished card')} of the last sprint ${leftOver === 1 ? 'is' : 'are'} filled in with what was left; delete what you do not want.`;
  return formView(frame, [
    section(`For ${typed(team.name)}. You see a preview before the team commits to anything.${carried}`),
    textField({ field: fields.name, label: 'Sprint name', initial: draft.name, maxLength: NAME_MAX_LENGTH }),
    textField({
      field: fields.goal,
      label: 'Goal',
      hint: 'One sentence: why this sprint is worth it.',
      optional: true,
      initial: draft.goal,
      maxLength: GOAL_MAX_LENGTH,
    }),
    dateField({ field: fields.startsOn, label: 'First day', initial: draft.startsOn }),
    dateField({ field: fields.endsOn, label: 'Last day', initial: draft.endsOn }),
    timeField({
      field: fields.closesAt,
      label: 'Closing time on the last day',
      hint: `In the team’s time zone, ${team.timeZone}.`,
      initial: draft.closesAt,
    }),
    textField({ field: fields.awayDays, ...AWAY_DAYS_FIELD, initial: draft.awayDays }),
    ...cardTextFields(draft.cards),
  ]);
}
