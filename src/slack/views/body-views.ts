/** Bodies of work that a team keeps: the form, and what is said when one was kept, changed, put in order or ended. */
import type { ModalView } from '@slack/types';
import type { AdviceQuestion, KeptAdvice } from '../../app/advice/advice.ts';
import { BODY_NAME_MAX_LENGTH } from '../../app/bodies/body-of-work.ts';
import type { BodyForm, EndedBody, KeptBodyReply } from '../../app/bodies/keep-bodies.ts';
import { endedSentence, keptSentence } from '../../words/bodies.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { mrkdwnOf } from '../../words/typed-text.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import { FORECAST_FIELDS, growthField, POINTS_MAX_LENGTH } from './advice-forms.ts';
import { adviceMessage } from './advice-message.ts';
import { actions, button, type ChartImage, section } from './block-builders.ts';
import { choiceField, textField } from './form-inputs.ts';
import { formView } from './form-view.ts';
import { type MessageView, messageView } from './message-view.ts';

/** The first three are named as in the forecast's form. */
export const BODY_FIELDS = {
  backlogPoints: 'backlogPoints',
  growthPoints: FORECAST_FIELDS.growthPoints,
  sharePercent: 'sharePercent',
  name: 'name',
  turn: 'turn',
  state: 'state',
} as const;

const BODY_STATES = ['open', 'done', 'removed'] as const;

/** @param asked a forecast that is to be kept */
export function bodyFormView(
  { team, body, turn }: BodyForm,
  asked?: Extract<AdviceQuestion, { about: 'forecast' }>,
  replyTo?: string,
): ModalView {
  const fields = BODY_FIELDS;
  const frame = {
    form: 'keep',
    title: say('kept-form-title'),
    submit: say('kept-form-submit'),
    context: { teamId: team.id, ...(body && { bodyId: body.id }) },
    replyTo,
  };
  const points = body?.leftPoints ?? asked?.backlogPoints;
  const share = body?.sharePercent ?? asked?.sharePercent;
  const amount = (value: number | undefined): string => (value === undefined ? '' : String(value));
  return formView(frame, [
    section(mrkdwn('kept-form-intro', { team: team.name })),
    textField({
      field: fields.name,
      label: say('kept-form-name'),
      hint: say('kept-form-name-hint'),
      initial: body?.name ?? '',
      maxLength: BODY_NAME_MAX_LENGTH,
    }),
    textField({
      field: fields.backlogPoints,
      label: say('kept-form-points'),
      hint: say('forecast-form-points-hint'),
      initial: amount(points),
      maxLength: POINTS_MAX_LENGTH,
    }),
    growthField(body ?? asked),
    textField({
      field: fields.sharePercent,
      label: say('forecast-form-share'),
      hint: say('kept-form-share-hint'),
      optional: true,
      initial: amount(share),
      maxLength: POINTS_MAX_LENGTH,
    }),
    textField({
      field: fields.turn,
      label: say('kept-form-turn'),
      hint: say('kept-form-turn-hint'),
      optional: true,
      initial: amount(turn),
      maxLength: POINTS_MAX_LENGTH,
    }),
    ...(body === undefined
      ? []
      : [
          choiceField({
            field: fields.state,
            label: say('kept-form-state'),
            choices: BODY_STATES.map((state) => ({
              value: state,
              label: say('kept-form-state-choice', { state }),
            })),
            initial: 'open',
          }),
        ]),
  ]);
}

/** What was kept or changed, and the dates of all that is kept. */
export function bodyKeptMessage(kept: KeptBodyReply, chart?: ChartImage): MessageView {
  return withDates(keptSentence(kept), kept.advice, chart);
}

function withDates(sentence: string, advice: KeptAdvice, chart: ChartImage | undefined): MessageView {
  const { blocks } = adviceMessage(advice, chart);
  return messageView([section(mrkdwnOf(sentence)), ...blocks]);
}

export function bodyEndedMessage(ended: EndedBody): MessageView {
  const place = encodeValue({ channelId: ended.team.channelId });
  return messageView([
    section(mrkdwnOf(endedSentence(ended))),
    actions([button(say('kept-button'), { actionId: ACTIONS.showKept, value: place })]),
  ]);
}
