/** The form in which what a sprint was worth is recorded. */
import type { ModalView } from '@slack/types';
import type { ValueForm } from '../../app/history/record-value.ts';
import { typed } from '../../words/typed-text.ts';
import { encodeContext } from '../form-contexts.ts';
import { COMMAND, FIELDS, FORMS } from '../ids.ts';
import { code, context, section } from './block-builders.ts';
import { formatValue, sprintChoiceLabel } from './closed-sprint-words.ts';
import { choiceField, textField } from './form-inputs.ts';
import { formView, withReplyTo } from './form-view.ts';

const VALUE_MAX_LENGTH = 40;

export function valueFormView({ team, sprints }: ValueForm, replyTo?: string): ModalView {
  const fields = FIELDS.value;
  const frame = {
    callbackId: FORMS.value,
    title: 'Record a value',
    submit: 'Record',
    context: encodeContext(withReplyTo({ teamId: team.id }, replyTo)),
  };
  return formView(frame, [
    section(
      `What was a sprint of ${typed(team.name)} worth? One number for each sprint, always in the same unit. Its growth then stands beside the growth of velocity.`,
    ),
    choiceField({
      field: fields.sprintId,
      label: 'Sprint',
      choices: sprints.map((sprint) => ({
        value: sprint.sprintId,
        label: sprintChoiceLabel(sprint, presentValue(sprint.recordedValue)),
      })),
      initial: sprints[0]?.sprintId,
    }),
    textField({
      field: fields.recordedValue,
      label: 'Value',
      hint: 'One number a sprint in a unit of your choice: revenue, users, anything. A new number takes the place of the old one, which is kept on record.',
      maxLength: VALUE_MAX_LENGTH,
    }),
    context(
      `Members and the product owner can see it with ${code(`${COMMAND} history`)}, and may share that in the channel.`,
    ),
  ]);
}

function presentValue(value: number | undefined): string {
  return value === undefined ? 'no value yet' : formatValue(value);
}
