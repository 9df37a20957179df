/** What a team tries: keeping it, listing it, and deciding what becomes of it. */
import { OUTCOMES, type Outcome } from '../../app/experiments/experiment.ts';
import { suggestionOf } from '../../words/experiments.ts';
import { encodeValue, experimentValue, sprintValue, tryValue } from '../button-values.ts';
import { tryContext } from '../form-contexts.ts';
import { ACTIONS } from '../ids.ts';
import { openForm } from '../listeners/asker.ts';
import {
  experimentEndedMessage,
  experimentKeptMessage,
  experimentsMessage,
  TRY_FIELDS,
  tryFormView,
} from '../views/experiment-views.ts';
import { type Button, type Command, command, placeIn, readHeld, showFirstForm, showForm } from './command.ts';

/** As much as a button holds, and more than may be kept. */
const TEXT_IN_BUTTON = 300;

export const tryIt: Command = command({
  word: 'try',
  who: 'facilitator',
  run: async (context, caller, rest) => {
    if (rest === '') return showFirstForm(tryIt, context, caller);
    const { actor, place, replyTo } = caller;
    const make = async () =>
      tryFormView(await context.useCases.tryForm(actor, { place }), { text: rest }, replyTo);
    const value = encodeValue({ channelId: place.channelId, text: rest.slice(0, TEXT_IN_BUTTON) });
    return showForm(context, caller, make, () => ({ actionId: ACTIONS.tryText, value }));
  },
  forms: [
    {
      name: 'try',
      fields: TRY_FIELDS,
      make: async ({ useCases }, { actor, replyTo }, place) =>
        tryFormView(await useCases.tryForm(actor, { place }), { text: '' }, replyTo),
      submit: async (useCases, { actor, fields, context }) => {
        const { teamId, changes } = readHeld(tryContext, context);
        const tried = await useCases.tryExperiment(actor, {
          teamId,
          changes,
          text: fields.text(TRY_FIELDS.text),
          ratio: fields.text(TRY_FIELDS.ratio),
          direction: fields.text(TRY_FIELDS.direction),
        });
        return { next: 'close', say: experimentKeptMessage(tried) };
      },
    },
  ],
  buttons: {
    [ACTIONS.tryThis]: {
      press: async ({ useCases, client }, { actor, replyTo, triggerId }, held) => {
        const form = await useCases.tryForm(actor, readHeld(sprintValue, held));
        const suggested = form.verdict ? suggestionOf(form.verdict) : { text: '' };
        await openForm(client, triggerId, tryFormView(form, suggested, replyTo));
      },
    },
    [ACTIONS.tryText]: {
      press: async ({ useCases, client }, { actor, replyTo, triggerId }, held) => {
        const { channelId, text } = readHeld(tryValue, held);
        const place = { channelId, isDirect: false };
        await openForm(
          client,
          triggerId,
          tryFormView(await useCases.tryForm(actor, { place }), { text }, replyTo),
        );
      },
    },
  },
});

/** `drop 2`, or `keep nothing is pulled in`. */
const DECISION = /^(\p{L}+)\s*([\s\S]*)$/u;

export const experiments = command({
  word: 'experiments',
  who: 'team-and-owner',
  run: async ({ useCases }, { actor, place, tell }, rest) => {
    const [, word = '', reference = ''] = DECISION.exec(rest) ?? [];
    const outcome = word.toLowerCase();
    if (!isOutcome(outcome)) return tell(experimentsMessage(await useCases.listExperiments(actor, place)));
    await tell(experimentEndedMessage(await useCases.endExperiment(actor, { place, reference, outcome })));
  },
  buttons: {
    [ACTIONS.keepExperiment]: decision('keep'),
    [ACTIONS.changeExperiment]: {
      press: async ({ useCases, client }, { actor, replyTo, triggerId }, value) => {
        const form = await useCases.tryForm(actor, readHeld(experimentValue, value));
        await openForm(client, triggerId, tryFormView(form, form.changing ?? { text: '' }, replyTo));
      },
    },
    [ACTIONS.dropExperiment]: decision('drop'),
    [ACTIONS.showExperiments]: {
      press: async ({ useCases }, { actor, tell }, value) => {
        await tell(experimentsMessage(await useCases.listExperiments(actor, placeIn(value))));
      },
    },
  },
});

/** In place of the question comes what was decided. */
function decision(outcome: Outcome): Button {
  return {
    press: async ({ useCases }, { actor, replace }, value) => {
      const input = { ...readHeld(experimentValue, value), outcome };
      await replace(experimentEndedMessage(await useCases.endExperiment(actor, input)));
    },
  };
}

function isOutcome(word: string): word is Outcome {
  return (OUTCOMES as readonly string[]).includes(word);
}
