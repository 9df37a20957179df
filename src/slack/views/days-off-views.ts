/** The form for days off and weekdays, and what confirms them. */
import type { ModalView } from '@slack/types';
import type { SpanOff } from '../../app/days-off/days-ahead.ts';
import type { DaysOffForm, DaysOffSaved, Whose } from '../../app/days-off/days-off-form.ts';
import type { DaysOffPreview } from '../../app/days-off/import-days-off.ts';
import type { DaysOffSaid } from '../../app/days-off/say-days-off.ts';
import type { WeekdaysSaid } from '../../app/days-off/say-weekdays.ts';
import {
  daysOffPreviewLead,
  daysOffPreviewLines,
  daysOffSaidSentence,
  daysOffSavedSentence,
  holidaysSentence,
  leftOutLines,
  spanOffWords,
  weekdaysSaidSentence,
} from '../../words/days-off.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { WEEKDAYS, weekdayName } from '../../words/team.ts';
import type { KeptFile } from '../form-contexts.ts';
import { context, section } from './block-builders.ts';
import {
  type Choice,
  choiceField,
  choicesField,
  dateField,
  fileField,
  textField,
  tickField,
} from './form-inputs.ts';
import { formView, noticeView } from './form-view.ts';
import { lineList, lineSections } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';

export const DAYS_OFF_FIELDS = {
  whose: 'whose',
  from: 'from',
  to: 'to',
  isHalf: 'isHalf',
  takeBack: 'takeBack',
  weekdays: 'weekdays',
  file: 'file',
  holidays: 'holidays',
} as const;

export const DAYS_OFF_PREVIEW_FIELDS = { takesFree: 'takesFree' } as const;

/** How calendar programs name their files. */
const FILE_TYPES = ['ics', 'ical', 'ifb', 'icalendar'];

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
    fileField({
      field: fields.file,
      label: say('days-off-file'),
      hint: say('days-off-file-hint'),
      optional: true,
      fileTypes: FILE_TYPES,
      maxFiles: 1,
    }),
    ...(whose.includes('team')
      ? [
          textField({
            field: fields.holidays,
            label: say('days-off-holidays'),
            hint: say('days-off-holidays-hint'),
            optional: true,
          }),
        ]
      : []),
  ]);
}

function takeBackChoice(whose: Whose, span: SpanOff): Choice {
  return {
    value: `${whose}:${span.from}:${span.to}`,
    label: say(`days-off-take-back-${whose}`, { days: spanOffWords(span) }),
  };
}

/** Most sections of days, and of what is left out. */
const DAY_SECTIONS_MAX = 8;
const LEFT_OUT_SECTIONS_MAX = 4;

/** Where the days come from. */
export type PreviewSource = { readonly file: KeptFile } | { readonly holidaysOf: string };

/** What a calendar gives; sent off, it saves what it shows. */
export function daysOffPreviewView(
  preview: DaysOffPreview,
  source: PreviewSource,
  replyTo?: string,
): ModalView {
  const { team, whose, days, leftOut, outside, regions, takesFree, fingerprint } = preview;
  const offersFree = takesFree || leftOut.some(({ why }) => why === 'free');
  const blocks = [
    section(daysOffPreviewLead(preview)),
    ...lineSections(
      lineList('', daysOffPreviewLines(days), (count) => mrkdwn('days-off-preview-more', { count })),
      { maxSections: DAY_SECTIONS_MAX },
    ),
    ...lineSections(
      lineList(mrkdwn('days-off-preview-left-out'), leftOutLines(leftOut, outside), (count) =>
        mrkdwn('days-off-preview-left-out-more', { count }),
      ),
      { maxSections: LEFT_OUT_SECTIONS_MAX },
    ),
    context('file' in source ? mrkdwn('days-off-preview-rule') : holidaysSentence(regions)),
  ];
  if (days.length === 0 && !offersFree) return noticeView(say('days-off-title'), blocks);
  const free = tickField({
    field: DAYS_OFF_PREVIEW_FIELDS.takesFree,
    label: say('days-off-takes-free'),
    optional: true,
    choices: [{ value: 'yes', label: say('days-off-takes-free-yes') }],
    initial: takesFree ? ['yes'] : [],
  });
  const frame = {
    form: 'days-off-preview',
    title: say('days-off-title'),
    submit: say(days.length === 0 ? 'days-off-preview-check' : 'days-off-preview-submit'),
    context: { teamId: team.id, whose, source, seen: fingerprint },
    replyTo,
  };
  return formView(frame, [...blocks, ...(offersFree ? [free] : [])]);
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
