/** The planning questions, which anyone on the team and its product owner may ask. */
import type { Advice, AdviceQuestion } from '../../app/advice/advice.ts';
import { Refusal } from '../../app/refusal.ts';
import { parsePoints } from '../../sprint/points.ts';
import { adviceValue, StaleControl } from '../button-values.ts';
import { teamContext } from '../form-contexts.ts';
import { ACTIONS } from '../ids.ts';
import { type Asker, openForm } from '../listeners/asker.ts';
import type { ListenerContext } from '../listeners/listener-context.ts';
import {
  parseForecastQuestion,
  parseRangeQuestion,
  readForecastFields,
} from '../listeners/parse-advice-question.ts';
import {
  FORECAST_FIELDS,
  forecastFormView,
  forecastQuestionMessage,
  RANGE_FIELDS,
  rangeFormView,
} from '../views/advice-forms.ts';
import { adviceDetailsMessage } from '../views/advice-message.ts';
import { adviceSharedReply } from '../views/sprint-change-views.ts';
import { answerTo, tellAdvice } from './advice-answer.ts';
import { type Button, type Caller, command, placeIn, readHeld } from './command.ts';
import { KEPT_BUTTONS, KEPT_FORM, tellKept } from './kept.ts';

export const range = command({
  word: 'range',
  who: 'team-and-owner',
  cost: 'heavy',
  run: (context, caller, rest) =>
    tellAdvice(context, caller, { place: caller.place }, parseRangeQuestion(rest)),
  forms: [
    {
      name: 'range',
      fields: RANGE_FIELDS,
      recordsNothing: true,
      cost: 'heavy',
      submit: async (useCases, { actor, fields, context }, tools) => {
        const { teamId } = readHeld(teamContext, context);
        const away = fields.text(RANGE_FIELDS.awayDays).trim();
        const points = fields.text(RANGE_FIELDS.points).trim();
        const question = {
          about: 'range',
          startsOn: fields.text(RANGE_FIELDS.startsOn),
          endsOn: fields.text(RANGE_FIELDS.endsOn),
          // The use case refuses what is no number at its field.
          awayDays: away === '' ? undefined : (parsePoints(away) ?? Number.NaN),
          points: points === '' ? undefined : (parsePoints(points) ?? Number.NaN),
        } as const;
        return { next: 'close', say: await answerTo({ useCases, ...tools }, actor, { teamId }, question) };
      },
    },
  ],
  buttons: {
    [ACTIONS.showRange]: asks({ about: 'range' }),
    [ACTIONS.changeRange]: {
      press: async (context, presser, value) => {
        const { teamId, question } = readHeld(adviceValue, value);
        if (question.about !== 'range') throw new StaleControl('question of another kind');
        const advice = await sameOrNextRange(context, presser, teamId, question);
        if (!('range' in advice)) throw new TypeError('the question about the range got another answer');
        await openForm(context.client, presser.triggerId, rangeFormView(advice, presser.replyTo));
      },
    },
    // Under the answers to all of these questions.
    [ACTIONS.explainAdvice]: {
      cost: 'heavy',
      press: async ({ useCases }, { actor, tell }, value) => {
        const { teamId, question } = readHeld(adviceValue, value);
        await tell(adviceDetailsMessage(await useCases.askAdvice(actor, { teamId }, question)));
      },
    },
    [ACTIONS.shareAdvice]: {
      cost: 'heavy',
      press: async ({ useCases }, presser, value) => {
        await useCases.shareAdvice(presser.actor, readHeld(adviceValue, value));
        await presser.tell(adviceSharedReply());
      },
    },
  },
  inOverview: { row: 'planning', actionId: ACTIONS.showRange },
});

export const odds = command({
  word: 'odds',
  who: 'team-and-owner',
  cost: 'heavy',
  run: (context, caller) => tellAdvice(context, caller, { place: caller.place }, { about: 'odds' }),
  buttons: { [ACTIONS.showOdds]: asks({ about: 'odds' }) },
  inOverview: { row: 'planning', actionId: ACTIONS.showOdds },
});

/** What is asked; the name of work that is kept asks about what is kept. @throws Refusal `bad-argument` */
async function questionOrKept(
  { useCases }: ListenerContext,
  { actor, place }: Caller,
  typed: string,
): Promise<AdviceQuestion> {
  try {
    return parseForecastQuestion(typed);
  } catch (unread) {
    const { keptNames } = await useCases.forecastForm(actor, { place });
    const isKept = keptNames.some((name) => name.toLowerCase().startsWith(typed.trim().toLowerCase()));
    if (isKept) return { about: 'kept' };
    throw unread;
  }
}

export const forecast = command({
  word: 'forecast',
  who: 'team-and-owner',
  cost: 'heavy',
  run: async (context, caller, typed) => {
    const { actor, place, triggerId } = caller;
    const rest = /^(?:list|kept|all)$/i.test(typed.trim()) ? '' : typed;
    if (await tellKept(context, caller, rest)) return;
    if (rest !== '') {
      const question = await questionOrKept(context, caller, rest);
      return tellAdvice(context, caller, { place }, question);
    }
    const form = await context.useCases.forecastForm(actor, { place });
    if (form.keptNames.length > 0)
      return tellAdvice(context, caller, { teamId: form.team.id }, { about: 'kept' });
    if (triggerId === undefined) return caller.tell(forecastQuestionMessage(form));
    await openForm(context.client, triggerId, forecastFormView(form, undefined, caller.replyTo));
  },
  forms: [
    {
      name: 'forecast',
      fields: FORECAST_FIELDS,
      recordsNothing: true,
      cost: 'heavy',
      make: async ({ useCases }, { actor, replyTo }, place) =>
        forecastFormView(await useCases.forecastForm(actor, { place }), undefined, replyTo),
      submit: async (useCases, { actor, fields, context }, tools) => {
        const { teamId } = readHeld(teamContext, context);
        const { backlogPoints, growthPoints, sharePercent, byDay } = FORECAST_FIELDS;
        const question = readForecastFields(
          fields.text(backlogPoints),
          fields.text(growthPoints),
          fields.text(sharePercent),
          fields.text(byDay),
        );
        return { next: 'close', say: await answerTo({ useCases, ...tools }, actor, { teamId }, question) };
      },
    },
    KEPT_FORM,
  ],
  buttons: {
    ...KEPT_BUTTONS,
    [ACTIONS.changeForecast]: {
      press: async ({ useCases, client }, { actor, triggerId, replyTo }, value) => {
        const { teamId, question } = readHeld(adviceValue, value);
        if (question.about !== 'forecast') throw new StaleControl('question of another kind');
        const form = await useCases.forecastForm(actor, { teamId });
        await openForm(client, triggerId, forecastFormView(form, question, replyTo));
      },
    },
  },
  inOverview: { row: 'planning', actionId: ACTIONS.showKept },
});

export const history = command({
  word: 'history',
  who: 'team-and-owner',
  cost: 'heavy',
  run: (context, caller) => tellAdvice(context, caller, { place: caller.place }, { about: 'history' }),
  buttons: { [ACTIONS.showHistory]: asks({ about: 'history' }) },
  inOverview: { row: 'planning', actionId: ACTIONS.showHistory },
});

/** A question that needs no numbers. */
function asks(question: AdviceQuestion): Button {
  return {
    cost: 'heavy',
    press: (context, presser, value) => tellAdvice(context, presser, { place: placeIn(value) }, question),
  };
}

/** About the sprint of the question before, or about the next one when that is over by now. */
async function sameOrNextRange(
  { useCases }: ListenerContext,
  { actor }: Asker,
  teamId: string,
  asked: AdviceQuestion,
): Promise<Advice> {
  try {
    return await useCases.askAdvice(actor, { teamId }, asked);
  } catch (error) {
    if (!(error instanceof Refusal && error.code === 'bad-input')) throw error;
    return useCases.askAdvice(actor, { teamId }, { about: 'range' });
  }
}
