/** The form in which what a sprint was worth is recorded, and what confirms it. */
import type { ModalView } from '@slack/types';
import type { ValueForm, ValueRecorded } from '../../app/history/record-value.ts';
import type { ContentOf } from '../../app/posting/post-kinds.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import { number } from '../../words/amounts.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { pastSprintChoice } from '../../words/sprint.ts';
import { reasonSentence } from '../../words/undefined.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS, openFormAction } from '../ids.ts';
import { actions, button, context, lead, section } from './block-builders.ts';
import { choiceField, textField } from './form-inputs.ts';
import { formView } from './form-view.ts';
import { type MessageView, messageView } from './message-view.ts';

export const VALUE_FIELDS = {
  sprintId: 'sprintId',
  recordedValue: 'recordedValue',
} as const;

const VALUE_MAX_LENGTH = 40;

export function valueQuestionMessage({
  heading: { sprint },
  value,
}: ContentOf<'value-question'>): MessageView {
  const args = { sprint: sprint.name, endsOn: sprint.endsOn };
  const label = value === undefined ? say('value-record') : say('value-correct');
  return messageView([
    value === undefined
      ? lead(say('value-question', args))
      : section(mrkdwn('value-recorded', { ...args, value })),
    actions([button(label, { actionId: ACTIONS.recordValue, value: encodeValue({ sprintId: sprint.id }) })]),
    context(mrkdwn('value-who-sees')),
  ]);
}

export function valueFormView({ team, sprints, initial }: ValueForm, replyTo?: string): ModalView {
  const frame = {
    form: 'value',
    title: say('value-title'),
    submit: say('value-submit'),
    context: { teamId: team.id },
    replyTo,
  };
  const present = (value: number | undefined) =>
    value === undefined ? say('value-none-yet') : number(value);
  return formView(frame, [
    section(mrkdwn('value-intro', { team: team.name })),
    choiceField({
      field: VALUE_FIELDS.sprintId,
      label: say('value-sprint'),
      choices: sprints.map((sprint) => ({
        value: sprint.sprintId,
        label: pastSprintChoice(sprint, present(sprint.recordedValue)),
      })),
      initial,
    }),
    textField({
      field: VALUE_FIELDS.recordedValue,
      label: say('value-amount'),
      hint: say('value-amount-hint'),
      maxLength: VALUE_MAX_LENGTH,
    }),
    context(mrkdwn('value-who-sees')),
  ]);
}

export function valueRecordedMessage(recorded: ValueRecorded): MessageView {
  const value = encodeValue({ channelId: recorded.team.channelId });
  return messageView([
    section(recordedSentence(recorded)),
    section(growthSentence(recorded)),
    context(mrkdwn('value-not-said')),
    actions([
      button(say('value-another'), { actionId: openFormAction('value'), value }),
      button(say('value-history'), { actionId: ACTIONS.showHistory, value }),
    ]),
  ]);
}

function recordedSentence({ sprint, value, previousValue }: ValueRecorded): string {
  const args = { sprint: sprint.name, endsOn: sprint.endsOn, value };
  if (previousValue === value) return mrkdwn('value-same', args);
  if (previousValue === undefined) return mrkdwn('value-recorded', args);
  return mrkdwn('value-replaced', { ...args, previous: previousValue });
}

function growthSentence({ sprint, value, growth, measuredBy }: ValueRecorded): string {
  if (!measuredBy) return mrkdwn('value-no-measure');
  if (sprint.sprintId === measuredBy.sprintId) return mrkdwn('value-is-measure');
  const { valueGrowth, velocityGrowth, valuePerPointGrowth } = growth;
  for (const ratio of [valueGrowth, velocityGrowth]) {
    if (!isDefined(ratio)) return `${mrkdwn('value-no-growth')} ${reasonSentence(ratio.undefined)}`;
  }
  const both = {
    sprint: measuredBy.name,
    value: valueGrowth as number,
    velocity: velocityGrowth as number,
  };
  if (!isDefined(valuePerPointGrowth)) {
    return `${mrkdwn('value-growth', both)} ${reasonSentence(valuePerPointGrowth.undefined)}`;
  }
  if (value <= 0) return mrkdwn('value-growth', both);
  return mrkdwn('value-growth-point', { ...both, point: valuePerPointGrowth });
}
