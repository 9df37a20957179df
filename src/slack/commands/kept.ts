/** What `forecast` does with bodies of work that a team keeps: keeping them, their order, and letting them go. */
import type { AdviceQuestion } from '../../app/advice/advice.ts';
import type { BodyEnd } from '../../app/bodies/keep-bodies.ts';
import { adviceValue, bodyValue, encodeValue, StaleControl } from '../button-values.ts';
import { bodyContext } from '../form-contexts.ts';
import { ACTIONS, openFormAction } from '../ids.ts';
import { openForm } from '../listeners/asker.ts';
import type { ListenerContext } from '../listeners/listener-context.ts';
import { parseNamedBody, parseOrder, parseRename, readBodyFields } from '../listeners/parse-body.ts';
import { forecastFormView } from '../views/advice-forms.ts';
import { adviceMessage, jointMessage } from '../views/advice-message.ts';
import { BODY_FIELDS, bodyEndedMessage, bodyFormView, bodyKeptMessage } from '../views/body-views.ts';
import { chartOf, tellAdvice } from './advice-answer.ts';
import { type Button, type Caller, type Form, placeIn, readHeld, showForm } from './command.ts';

type Handler = (context: ListenerContext, caller: Caller, rest: string) => Promise<void>;

/** By the word after `forecast`. */
const WORDS: Readonly<Record<string, Handler>> = {
  keep: async (context, caller, rest) => {
    const { actor, place, replyTo, tell } = caller;
    if (rest === '') {
      const make = async () =>
        bodyFormView(await context.useCases.bodyForm(actor, { place }), undefined, replyTo);
      const value = encodeValue({ channelId: place.channelId });
      return showForm(context, caller, make, () => ({ actionId: openFormAction('keep'), value }));
    }
    const kept = await context.useCases.keepBody(actor, { place, ...parseNamedBody(rest) });
    await tell(bodyKeptMessage(kept, await chartOf(context, kept.advice)));
  },
  done: ends('done'),
  forget: ends('removed'),
  rename: async (context, { actor, place, tell }, rest) => {
    const kept = await context.useCases.renameBody(actor, { place, ...parseRename(rest) });
    await tell(bodyKeptMessage(kept, await chartOf(context, kept.advice)));
  },
  together: async (context, { actor, place, tell }, reference) => {
    const advice = await context.useCases.jointForecast(actor, { place, reference });
    await tell(jointMessage(advice, await chartOf(context, advice)));
  },
  order: async (context, { actor, place, tell }, rest) => {
    const advice = await context.useCases.orderBodies(actor, { place, references: parseOrder(rest) });
    await tell(adviceMessage(advice, await chartOf(context, advice)));
  },
};

function ends(how: BodyEnd): Handler {
  return async ({ useCases }, { actor, place, tell }, reference) => {
    await tell(bodyEndedMessage(await useCases.endBody(actor, { place, reference, how })));
  };
}

const WORD_AND_REST = /^(\p{L}+)(?:\s+([\s\S]*))?$/u;

/** Whether it was about work that is kept, and has been answered. */
export async function tellKept(context: ListenerContext, caller: Caller, typed: string): Promise<boolean> {
  const [, word = '', rest = ''] = WORD_AND_REST.exec(typed.trim()) ?? [];
  const handler = Object.hasOwn(WORDS, word.toLowerCase()) ? WORDS[word.toLowerCase()] : undefined;
  if (!handler) return false;
  await handler(context, caller, rest.trim());
  return true;
}

export const KEPT_FORM: Form = {
  name: 'keep',
  fields: BODY_FIELDS,
  cost: 'heavy',
  make: async ({ useCases }, { actor, replyTo }, place) =>
    bodyFormView(await useCases.bodyForm(actor, { place }), undefined, replyTo),
  submit: async (useCases, { actor, fields, context }, tools) => {
    const { teamId, bodyId } = readHeld(bodyContext, context);
    const state = bodyId === undefined ? 'open' : fields.text(BODY_FIELDS.state);
    if (bodyId !== undefined && (state === 'done' || state === 'removed')) {
      const ended = await useCases.endBody(actor, { bodyId, how: state });
      return { next: 'close', say: bodyEndedMessage(ended) };
    }
    const said = readBodyFields((field) => fields.text(field));
    const kept = await useCases.keepBody(
      actor,
      bodyId === undefined ? { teamId, ...said } : { bodyId, ...said },
    );
    return {
      next: 'close',
      say: bodyKeptMessage(kept, await chartOf({ useCases, ...tools }, kept.advice)),
    };
  },
};

export const KEPT_BUTTONS: Readonly<Record<string, Button>> = {
  /** What is kept; where nothing is, the form of a forecast. */
  [ACTIONS.showKept]: {
    cost: 'heavy',
    press: async (context, presser, value) => {
      const form = await context.useCases.forecastForm(presser.actor, { place: placeIn(value) });
      if (form.keptNames.length > 0)
        return tellAdvice(context, presser, { teamId: form.team.id }, { about: 'kept' });
      await openForm(context.client, presser.triggerId, forecastFormView(form, undefined, presser.replyTo));
    },
  },
  [ACTIONS.changeBody]: {
    press: async ({ useCases, client }, { actor, triggerId, replyTo }, value) => {
      const form = await useCases.bodyForm(actor, readHeld(bodyValue, value));
      await openForm(client, triggerId, bodyFormView(form, undefined, replyTo));
    },
  },
  [ACTIONS.keepForecast]: {
    press: async ({ useCases, client }, { actor, triggerId, replyTo }, value) => {
      const { teamId, question } = readHeld(adviceValue, value);
      const form = await useCases.bodyForm(actor, { teamId });
      await openForm(client, triggerId, bodyFormView(form, forecastIn(question), replyTo));
    },
  },
};

function forecastIn(question: AdviceQuestion) {
  if (question.about !== 'forecast') throw new StaleControl('question of another kind');
  return question;
}
