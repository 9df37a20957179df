/** The form that sets a team up in its channel, or changes it. */
import type { ModalView } from '@slack/types';
import type { SetupForm } from '../../app/team/set-up-team.ts';
import { encodeContext } from '../form-contexts.ts';
import { FIELDS, FORMS } from '../ids.ts';
import { context, section } from './block-builders.ts';
import { CAUTION } from './caution-words.ts';
import { peopleField, textField, tickField, timeField } from './form-inputs.ts';
import { formView, withReplyTo } from './form-view.ts';
import { WEEKDAYS } from './weekday-words.ts';

const NAME_MAX_LENGTH = 80;

export function setupFormView(form: SetupForm, replyTo?: string): ModalView {
  const fields = FIELDS.setup;
  const frame = {
    callbackId: FORMS.setup,
    title: form.existing ? 'Change the team' : 'Set up a team',
    submit: form.existing ? 'Save' : 'Set up',
    context: encodeContext(withReplyTo({ channelId: form.channelId }, replyTo)),
  };
  return formView(frame, [
    section(
      `For <#${form.channelId}>. On working days of a sprint each member is asked, in a direct message, what is left on their cards. The verdict is posted in this channel.`,
    ),
    context(CAUTION),
    textField({ field: fields.name, label: 'Team name', initial: form.name, maxLength: NAME_MAX_LENGTH }),
    peopleField({
      field: fields.memberIds,
      label: 'Members',
      hint: 'Who works on cards.',
      initial: form.memberIds,
    }),
    peopleField({
      field: fields.facilitatorIds,
      label: 'Facilitators',
      hint: 'Who may plan, close and cancel sprints and change these settings.',
      initial: form.facilitatorIds,
    }),
    peopleField({
      field: fields.productOwnerId,
      label: 'Product owner',
      optional: true,
      max: 1,
      initial: form.productOwnerId === undefined ? [] : [form.productOwnerId],
    }),
    textField({
      field: fields.timeZone,
      label: 'Time zone',
      hint: 'Region and city, for example Europe/Lisbon, America/New_York or Asia/Kolkata.',
      initial: form.timeZone,
      maxLength: 60,
    }),
    timeField({
      field: fields.promptAt,
      label: 'When to ask each day',
      hint: 'In the team’s time zone.',
      initial: form.promptAt,
    }),
    tickField({
      field: fields.workingDays,
      label: 'Working days',
      choices: WEEKDAYS.map(({ weekday, name }) => ({ value: String(weekday), label: name })),
      initial: form.workingDays.map(String),
    }),
  ]);
}
