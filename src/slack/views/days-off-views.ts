/** The form for days off and weekdays, and what confirms them. */
import type { ModalView } from '@slack/types';
import type { SpanOff } from '../../app/days-off/days-ahead.ts';
import type { DaysOffForm, DaysOffSaved, Whose } from '../../app/days-off/days-off-form.ts';
import type { DaysOffSaid } from '../../app/days-off/say-days-off.ts';
import type { WeekdaysSaid } from '../../app/days-off/say-weekdays.ts';
import {
  daysOffSaidSentence,
  daysOffSavedSentence,
  spanOffWords,
  weekdaysSaidSentence,
} from '../../words/days-off.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { WEEKDAYS, weekdayName } from '../../words/team.ts';
import { section } from './block-builders.ts';
import { type Choice, choiceField, choicesField, dateField, tickField } from './form-inputs.ts';
import { formView } from './form-view.ts';
import { type MessageView, messageView } from './message-view.ts';

export const DAYS_OFF_FIELDS = {
  whose: 'whose',
  from: 'from',
  to: 'to',
  isHalf: 'isHalf',
  takeBack: 'takeBack',
  weekdays: 'weekdays',
} as const;

export function daysOffFormView(form: DaysOffForm, replyTo?: string): ModalView {
  const fields = DAYS_OFF_FIELDS;
  const { team, whose, own, ofTeam, weekdays } = form;
  const frame = {
    form: 'days-off',
    title: say('days-off-title'),
    submit: say('days-off-submit'),
    context: { teamId: team.id },
    replyTo,
  };
  const known = [
    ...own.map((span) => takeBackChoice('own', span)),
    ...(whose.includes('team') ? ofTeam.map((span) => takeBackChoice('team', span)) : []),
  ];
  return formView(frame, [
    section(mrkdwn('days-off-intro', { team: team.name })),
    choiceField({
      field: fields.whose,
      label: say('days-off-whose'),
      choices: whose.map((value) => ({ value, label: say(`days-off-whose-${value}`) })),
      initial: whose[0],
    }),
    dateField({ field: fields.from, label: say('days-off-from'), optional: true, initial: '' }),
    dateField({
      field: fields.to,
      label: say('days-off-to'),
      hint: say('days-off-to-hint'),
      optional: true,
      initial: '',
    }),
    tickField({
      field: fields.isHalf,
      label: say('days-off-is-half'),
      optional: true,
      choices: [{ value: 'half', label: say('days-off-is-half-yes') }],
      initial: [],
    }),
    ...(known.length === 0
      ? []
      : [
          choicesField({
            field: fields.takeBack,
            label: say('days-off-take-back'),
            optional: true,
            choices: known,
          }),
        ]),
    ...(weekdays === undefined
      ? []
      : [
          tickField({
            field: fields.weekdays,
            label: say('days-off-weekdays'),
            choices: WEEKDAYS.filter((day) => team.workingDays.includes(day)).map((day) => ({
              value: String(day),
              label: weekdayName(day),
            })),
            initial: weekdays.map(String),
          }),
        ]),
  ]);
}

function takeBackChoice(whose: Whose, span: SpanOff): Choice {
  return {
    value: `${whose}:${span.from}:${span.to}`,
    label: say(`days-off-take-back-${whose}`, { days: spanOffWords(span) }),
  };
}

export function daysOffSaidMessage(said: DaysOffSaid): MessageView {
  return messageView([section(daysOffSaidSentence(said))]);
}

export function daysOffSavedMessage(saved: DaysOffSaved): MessageView {
  return messageView([section(daysOffSavedSentence(saved))]);
}

export function weekdaysSaidMessage(said: WeekdaysSaid): MessageView {
  return messageView([section(weekdaysSaidSentence(said))]);
}
