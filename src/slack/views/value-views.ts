/** The form in which what sprints were worth is recorded, one by one or from a file, and what confirms it. */
import type { ModalView } from '@slack/types';
import type { ValueForm, ValueRecorded } from '../../app/history/record-value.ts';
import type { ValuesOutcome, ValuesPreview } from '../../app/import/import-values.ts';
import type { NewValue } from '../../app/import/values-reading.ts';
import type { ContentOf } from '../../app/posting/post-kinds.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import { number } from '../../words/amounts.ts';
import { badLines } from '../../words/import.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { pastSprintChoice } from '../../words/sprint.ts';
import { reasonSentence } from '../../words/undefined.ts';
import { encodeValue } from '../button-values.ts';
import type { KeptFile } from '../form-contexts.ts';
import { ACTIONS, openFormAction } from '../ids.ts';
import { actions, button, context, lead, section } from './block-builders.ts';
import { CSV_FILE_TYPES, choiceField, fileField, textField } from './form-inputs.ts';
import { formView, noticeView } from './form-view.ts';
import { lineList, lineSections } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';

export const VALUE_FIELDS = {
  sprintId: 'sprintId',
  recordedValue: 'recordedValue',
  file: 'valuesFile',
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
      optional: true,
      maxLength: VALUE_MAX_LENGTH,
    }),
    fileField({
      field: VALUE_FIELDS.file,
      label: say('value-file'),
      hint: say('value-file-hint'),
      optional: true,
      fileTypes: CSV_FILE_TYPES,
      maxFiles: 1,
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

/** Most sections of values, or of bad lines, in a form and in a message. */
const LIST_SECTIONS_MAX = 20;
const MESSAGE_SECTIONS_MAX = 3;

/** What a file would record, or what is wrong with which lines; sent off, it records what it shows. */
export function valuesPreviewView(preview: ValuesPreview, file: KeptFile, replyTo?: string): ModalView {
  const { team, values, same, without, problems, fingerprint } = preview;
  const rest = [
    ...(same > 0 ? [mrkdwn('values-same', { sprints: same })] : []),
    ...(without > 0 ? [mrkdwn('values-without', { rows: without })] : []),
  ].join(' ');
  const [head, lines] =
    problems.length > 0
      ? [mrkdwn('values-bad'), badLines(preview)]
      : [mrkdwn(values.length > 0 ? 'values-new' : 'values-nothing'), values.map(newValue)];
  const blocks = [
    ...lineSections(
      lineList(head, lines, (count) => mrkdwn('values-more', { count }), preview.problemsUntold),
      { maxSections: LIST_SECTIONS_MAX },
    ),
    ...(lines.length === 0 ? [section(head)] : []),
    ...(problems.length === 0 && rest !== '' ? [context(rest)] : []),
  ];
  if (values.length === 0) return noticeView(say('value-title'), blocks);
  const frame = {
    form: 'values-preview',
    title: say('value-title'),
    submit: say('value-submit'),
    context: { teamId: team.id, file, seen: fingerprint },
    replyTo,
  };
  return formView(frame, blocks);
}

function newValue({ sprint: { name, endsOn, recordedValue }, value }: NewValue): string {
  const args = { sprint: name, endsOn, value };
  return recordedValue === undefined
    ? mrkdwn('values-sprint', args)
    : mrkdwn('values-sprint-replaced', { ...args, previous: recordedValue });
}

export function valuesRecordedMessage({
  team,
  values,
}: Extract<ValuesOutcome, { kind: 'recorded' }>['recorded']): MessageView {
  const value = encodeValue({ channelId: team.channelId });
  return messageView([
    ...lineSections(
      lineList(mrkdwn('values-recorded', { sprints: values.length }), values.map(newValue), (count) =>
        mrkdwn('values-more', { count }),
      ),
      { maxSections: MESSAGE_SECTIONS_MAX },
    ),
    context(mrkdwn('value-not-said')),
    actions([button(say('value-history'), { actionId: ACTIONS.showHistory, value })]),
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
