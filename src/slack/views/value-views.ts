/** The form in which what a sprint was worth is recorded, and what confirms it. */
import type { ModalView } from '@slack/types';
import type { ValueForm, ValueRecorded } from '../../app/history/record-value.ts';
import { formatPercent } from '../../sprint/percent.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import { typed } from '../../words/typed-text.ts';
import { reasonSentence } from '../../words/undefined.ts';
import { encodeValue } from '../button-values.ts';
import { encodeContext } from '../form-contexts.ts';
import { ACTIONS, COMMAND, formId, openFormAction } from '../ids.ts';
import { actions, button, code, context, section } from './block-builders.ts';
import { datedDay, formatValue, sprintChoiceLabel } from './closed-sprint-words.ts';
import { choiceField, textField } from './form-inputs.ts';
import { formView, withReplyTo } from './form-view.ts';
import { type MessageView, messageView } from './message-view.ts';

export const VALUE_FIELDS = {
  sprintId: 'sprintId',
  recordedValue: 'recordedValue',
} as const;

const VALUE_MAX_LENGTH = 40;

export function valueFormView({ team, sprints }: ValueForm, replyTo?: string): ModalView {
  const fields = VALUE_FIELDS;
  const frame = {
    callbackId: formId('value'),
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

const NOT_SAID =
  'What this does not say: value often comes sprints after the work, and from much besides the team’s work. That both grow does not mean that one made the other grow.';

export function valueRecordedMessage(recorded: ValueRecorded): MessageView {
  const value = encodeValue({ channelId: recorded.team.channelId });
  return messageView([
    section(recordedWords(recorded)),
    section(growthWords(recorded)),
    context(NOT_SAID),
    actions([
      button('Record another value', { actionId: openFormAction('value'), value }),
      button('History', { actionId: ACTIONS.showHistory, value }),
    ]),
  ]);
}

function recordedWords({ sprint, value, previousValue }: ValueRecorded): string {
  const name = `${typed(sprint.name)} (ended ${datedDay(sprint.endsOn)})`;
  if (previousValue === value) return `${name} has the value ${formatValue(value)} already; nothing changed.`;
  const before =
    previousValue === undefined
      ? ''
      : ` It takes the place of ${formatValue(previousValue)}, which is kept on record.`;
  return `Recorded for ${name}: ${formatValue(value)}.${before}`;
}

function growthWords({ sprint, value, growth, measuredBy }: ValueRecorded): string {
  if (!measuredBy) {
    return 'Growth can be told once a closed sprint in which points were finished has a value above 0.';
  }
  const { valueGrowth, velocityGrowth, valuePerPointGrowth } = growth;
  if (sprint.sprintId === measuredBy.sprintId) {
    return 'This is the sprint that the growth of value is measured by. Record the sprints after it, and you see how value grows beside velocity.';
  }
  if (!isDefined(valueGrowth))
    return `For this sprint there is no growth. ${reasonSentence(valueGrowth.undefined)}`;
  if (!isDefined(velocityGrowth))
    return `For this sprint there is no growth. ${reasonSentence(velocityGrowth.undefined)}`;
  const both = `Measured by ${typed(measuredBy.name)}, the value stands at ${formatPercent(valueGrowth)} and velocity at ${formatPercent(velocityGrowth)}`;
  if (!isDefined(valuePerPointGrowth)) return `${both}. ${reasonSentence(valuePerPointGrowth.undefined)}`;
  if (value <= 0) return `${both}.`;
  return `${both}: a point brought ${formatPercent(valuePerPointGrowth)} of what it brought then.`;
}
