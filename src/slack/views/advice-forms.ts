/** The forms of the planning questions. */
import type { InputBlock, ModalView } from '@slack/types';
import type { AdviceQuestion, RangeAdvice } from '../../app/advice/advice.ts';
import type { ForecastForm } from '../../app/advice/ask-advice.ts';
import { number } from '../../words/amounts.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { encodeValue } from '../button-values.ts';
import { openFormAction } from '../ids.ts';
import { actions, button, section } from './block-builders.ts';
import { dateField, textField } from './form-inputs.ts';
import { formView } from './form-view.ts';
import { type MessageView, messageView } from './message-view.ts';

export const FORECAST_FIELDS = {
  backlogPoints: 'backlogPoints',
  growthPoints: 'growthPoints',
  sharePercent: 'sharePercent',
  byDay: 'byDay',
} as const;

export const POINTS_MAX_LENGTH = 20;

/**
 * Asks how large a body of work is, to forecast when it will be finished; or by which day, to say how much will be.
 *
 * @param asked the numbers of the question before, when they are to be changed
 */
export function forecastFormView(
  { team, velocities }: ForecastForm,
  asked?: Extract<AdviceQuestion, { about: 'forecast' }>,
  replyTo?: string,
): ModalView {
  const fields = FORECAST_FIELDS;
  const frame = {
    form: 'forecast',
    title: say('forecast-form-title'),
    submit: say('forecast-form-submit'),
    context: { teamId: team.id },
    replyTo,
  };
  return formView(frame, [
    section(
      [
        mrkdwn('forecast-form-intro', { team: team.name }),
        mrkdwn('forecast-form-pace', { sprints: velocities.length, amounts: velocities.map(number) }),
      ].join(' '),
    ),
    textField({
      field: fields.backlogPoints,
      label: say('forecast-form-points'),
      hint: say('forecast-form-points-hint'),
      optional: true,
      initial: asked?.backlogPoints === undefined ? '' : String(asked.backlogPoints),
      maxLength: POINTS_MAX_LENGTH,
    }),
    growthField(asked),
    textField({
      field: fields.sharePercent,
      label: say('forecast-form-share'),
      hint: say('forecast-form-share-hint'),
      optional: true,
      initial: asked?.sharePercent === undefined ? '' : String(asked.sharePercent),
      maxLength: POINTS_MAX_LENGTH,
    }),
    dateField({
      field: fields.byDay,
      label: say('forecast-form-by-day'),
      hint: say('forecast-form-by-day-hint'),
      optional: true,
      initial: asked?.byDay ?? '',
    }),
  ]);
}

/** By how much the work grows while it is done; the same in every form about a body of work. @param asked as it was typed */
export function growthField(
  asked:
    | Pick<Extract<AdviceQuestion, { about: 'forecast' }>, 'growthPoints' | 'growthMostPoints'>
    | undefined,
): InputBlock {
  const ends = [asked?.growthPoints, asked?.growthMostPoints];
  return textField({
    field: FORECAST_FIELDS.growthPoints,
    label: say('forecast-form-growth'),
    hint: say('forecast-form-growth-hint'),
    optional: true,
    initial: ends.filter((points) => points !== undefined).join('-'),
    maxLength: POINTS_MAX_LENGTH,
  });
}

/** Where no form can be opened, since nothing was pressed: what to type, and a button that opens it. */
export function forecastQuestionMessage({ team }: ForecastForm): MessageView {
  return messageView([
    section(mrkdwn('forecast-question')),
    actions([
      button(say('forecast-question-button'), {
        actionId: openFormAction('forecast'),
        value: encodeValue({ channelId: team.channelId }),
      }),
    ]),
  ]);
}

export const RANGE_FIELDS = {
  startsOn: 'startsOn',
  endsOn: 'endsOn',
  awayDays: 'awayDays',
  points: 'points',
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

/** Asks for the range of another sprint than the next one, or with people away. */
export function rangeFormView(
  { team, coming, question }: Pick<RangeAdvice, 'team' | 'coming' | 'question'>,
  replyTo?: string,
): ModalView {
  const fields = RANGE_FIELDS;
  const frame = {
    form: 'range',
    title: say('range-form-title'),
    submit: say('range-form-submit'),
    context: { teamId: team.id },
    replyTo,
  };
  return formView(frame, [
    section(mrkdwn('range-form-intro', { team: team.name })),
    dateField({ field: fields.startsOn, label: say('range-form-first-day'), initial: coming.startsOn }),
    dateField({ field: fields.endsOn, label: say('range-form-last-day'), initial: coming.endsOn }),
    awayDaysField(fields.awayDays, question.awayDays === undefined ? '' : String(question.awayDays)),
    textField({
      field: fields.points,
      label: say('range-form-points'),
      hint: say('range-form-points-hint'),
      optional: true,
      maxLength: 10,
      initial: question.points === undefined ? '' : String(question.points),
    }),
  ]);
}
