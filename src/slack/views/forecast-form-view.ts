/** The form that asks how large a body of work is, to tell when it will be finished. */
import type { ModalView } from '@slack/types';
import type { AdviceQuestion } from '../../app/advice/advice.ts';
import type { ForecastForm } from '../../app/advice/forecast-form.ts';
import { formatPoints } from '../../sprint/points.ts';
import { typed } from '../../words/typed-text.ts';
import { encodeValue } from '../button-values.ts';
import { encodeContext } from '../form-contexts.ts';
import { ACTIONS, COMMAND, FIELDS, FORMS } from '../ids.ts';
import { actions, button, code, section } from './block-builders.ts';
import { textField } from './form-inputs.ts';
import { formView, withReplyTo } from './form-view.ts';
import { type MessageView, messageView } from './message-view.ts';
import { listed } from './sprint-words.ts';

const POINTS_MAX_LENGTH = 20;

/** @param asked the numbers of the question before, when they are to be changed */
export function forecastFormView(
  { team, velocities }: ForecastForm,
  asked?: Extract<AdviceQuestion, { about: 'forecast' }>,
  replyTo?: string,
): ModalView {
  const fields = FIELDS.forecast;
  const frame = {
    callbackId: FORMS.forecast,
    title: 'Forecast',
    submit: 'Show the dates',
    context: encodeContext(withReplyTo({ teamId: team.id }, replyTo)),
  };
  return formView(frame, [
    section(`When will ${typed(team.name)} have finished a larger body of work? ${paceWords(velocities)}`),
    textField({
      field: fields.backlogPoints,
      label: 'Points left to do',
      hint: 'The sum of the estimates of all cards that belong to it, in the team’s own points.',
      initial: asked ? formatPoints(asked.backlogPoints) : '',
      maxLength: POINTS_MAX_LENGTH,
    }),
    textField({
      field: fields.growthPoints,
      label: 'Growth, in points a sprint',
      hint: 'By how much the work grows while you do it: new wishes, cards that were forgotten. Leave empty for none.',
      optional: true,
      initial: asked && asked.growthPoints > 0 ? formatPoints(asked.growthPoints) : '',
      maxLength: POINTS_MAX_LENGTH,
    }),
  ]);
}

function paceWords(velocities: readonly number[]): string {
  if (velocities.length === 0) return 'No closed sprint tells yet how much it finishes.';
  const amounts = listed(velocities.map(formatPoints));
  return velocities.length === 1
    ? `Its latest sprint finished ${amounts} points.`
    : `Its latest sprints finished ${amounts} points.`;
}

/** Where no form can be opened, since nothing was pressed: what to type, and a button that opens it. */
export function forecastQuestionMessage({ team }: ForecastForm): MessageView {
  return messageView([
    section(
      `How many points are left to do? Type ${code(`${COMMAND} forecast 120`)}, or ${code(`${COMMAND} forecast 120 growing 5`)} when the work grows by about 5 points with each sprint.`,
    ),
    actions([
      button('Fill in a form', {
        actionId: ACTIONS.openForecastForm,
        value: encodeValue({ channelId: team.channelId }),
      }),
    ]),
  ]);
}
