/** What each button leads to. Ids bound to handlers only. */
import type { z } from 'zod';
import type { AdviceQuestion } from '../../app/advice/advice.ts';
import type { AnswerOutcome } from '../../app/answering/record-answers.ts';
import type { Place } from '../../app/team/place.ts';
import {
  adviceValue,
  answersValue,
  decodeValue,
  placeValue,
  sprintDayValue,
  sprintValue,
} from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import { answerFormView } from '../views/answering/answer-form.ts';
import { growthMessage } from '../views/answering/growth-message.ts';
import { dailyPromptMessage } from '../views/answering/prompt-messages.ts';
import { cardsMessage } from '../views/cards/card-messages.ts';
import { helpMessage } from '../views/help.ts';
import { postMessage } from '../views/post-message.ts';
import {
  adviceSharedReply,
  sprintReopenedReply,
  statusSharedReply,
} from '../views/sprint-change-messages.ts';
import { type Asker, openForm } from './asker.ts';
import {
  answerFormFor,
  baselineFormFor,
  cancelFormFor,
  changeForecastFormFor,
  changeRangeFormFor,
  closeFormFor,
  dropFormFor,
  eraseFormFor,
  forecastFormFor,
  importFormFor,
  measuresFormFor,
  planFormFor,
  pullFormFor,
  setupFormFor,
  valueFormFor,
} from './form-makers.ts';
import { handOutExport } from './hand-out-export.ts';
import type { ListenerContext } from './listener-context.ts';
import { StaleControl } from './stale-control.ts';
import { tellAdvice } from './tell-advice.ts';
import { handOutCopy, tellPrivacy } from './tell-privacy.ts';
import { tellStatus } from './tell-status.ts';

/** Somebody who pressed a button. */
export type Presser = Asker & { readonly triggerId: string };

export type ButtonHandler = (
  context: ListenerContext,
  presser: Presser,
  value: string | undefined,
) => Promise<void>;

type PlaceFormMaker = typeof setupFormFor;

export const BUTTON_HANDLERS: Readonly<Record<string, ButtonHandler>> = {
  [ACTIONS.openAnswerForm]: openAnswerForm,

  [ACTIONS.recordUnchanged]: async ({ useCases }, presser, value) => {
    const { sprintId, day } = withDay(value);
    const prompt = await useCases.recordUnchanged(presser.actor, { sprintId, day });
    await presser.replace(postMessage({ kind: 'daily-prompt', prompt }));
  },

  [ACTIONS.recordAway]: async ({ useCases }, presser, value) => {
    const { sprintId, day } = withDay(value);
    const prompt = await useCases.recordAway(presser.actor, { sprintId, day });
    await presser.replace(postMessage({ kind: 'daily-prompt', prompt }));
  },

  [ACTIONS.growthAllSurprise]: recordExplained,
  [ACTIONS.growthAllDrift]: recordExplained,

  [ACTIONS.growthSomeOfEach]: async (context, presser, value) => {
    const input = decodeValue(answersValue, value);
    if (!input) return openAnswerForm(context, presser, value);
    const { useCases, client } = context;
    const { actor, triggerId, replyTo } = presser;
    // Records nothing as long as the growth is unexplained; tells which cards grew by how much.
    const outcome = await useCases.recordAnswers(actor, input);
    if (outcome.kind === 'recorded') return presser.replace(dailyPromptMessage(outcome.prompt));
    const form = await useCases.answerForm(actor, { sprintId: input.sprintId, day: input.day });
    await openForm(client, triggerId, answerFormView(form, outcome, replyTo));
  },

  [ACTIONS.openSetupForm]: opens(setupFormFor),
  [ACTIONS.openMeasuresForm]: opens(measuresFormFor),
  [ACTIONS.openPlanForm]: opens(planFormFor),
  [ACTIONS.openPullForm]: opens(pullFormFor),
  [ACTIONS.openDropForm]: opens(dropFormFor),
  [ACTIONS.openCloseForm]: opens(closeFormFor),
  [ACTIONS.openCancelForm]: opens(cancelFormFor),
  [ACTIONS.openImportForm]: opens(importFormFor),
  [ACTIONS.openValueForm]: opens(valueFormFor),
  [ACTIONS.openBaselineForm]: opens(baselineFormFor),

  [ACTIONS.openForecastForm]: opens(forecastFormFor),

  [ACTIONS.showOdds]: asks({ about: 'odds' }),
  [ACTIONS.showRange]: asks({ about: 'range' }),
  [ACTIONS.showHistory]: asks({ about: 'history' }),

  [ACTIONS.shareAdvice]: async ({ useCases }, presser, value) => {
    await useCases.shareAdvice(presser.actor, read(adviceValue, value));
    await presser.tell(adviceSharedReply());
  },

  [ACTIONS.changeRange]: async (context, presser, value) => {
    const { teamId, question } = read(adviceValue, value);
    if (question.about !== 'range') throw new StaleControl('question of another kind');
    const form = await changeRangeFormFor(context, presser, teamId, question);
    await openForm(context.client, presser.triggerId, form);
  },

  [ACTIONS.changeForecast]: async (context, presser, value) => {
    const { teamId, question } = read(adviceValue, value);
    if (question.about !== 'forecast') throw new StaleControl('question of another kind');
    const form = await changeForecastFormFor(context, presser, teamId, question);
    await openForm(context.client, presser.triggerId, form);
  },

  [ACTIONS.showCards]: async ({ useCases }, presser, value) => {
    await presser.tell(cardsMessage(await useCases.listCards(presser.actor, placeIn(value))));
  },

  [ACTIONS.showStatus]: (context, presser, value) => tellStatus(context, presser, placeIn(value)),

  [ACTIONS.exportSprints]: (context, presser, value) => handOutExport(context, presser, placeIn(value)),

  [ACTIONS.showHelp]: (_context, presser) => presser.tell(helpMessage()),

  [ACTIONS.showPrivacy]: tellPrivacy,
  [ACTIONS.sendMyCopy]: handOutCopy,
  [ACTIONS.openEraseForm]: async (context, presser) => {
    await openForm(context.client, presser.triggerId, await eraseFormFor(context, presser));
  },

  [ACTIONS.shareStatus]: async ({ useCases }, presser, value) => {
    await useCases.shareStatus(presser.actor, read(sprintValue, value));
    await presser.tell(statusSharedReply());
  },

  [ACTIONS.reopenLastSprint]: async ({ useCases }, presser, value) => {
    const reopened = await useCases.reopenSprint(presser.actor, { place: placeIn(value) });
    await presser.tell(sprintReopenedReply(reopened));
  },

  [ACTIONS.reopenSprint]: async ({ useCases }, presser, value) => {
    const reopened = await useCases.reopenSprint(presser.actor, read(sprintValue, value));
    await presser.tell(sprintReopenedReply(reopened));
  },
};

async function openAnswerForm(
  context: ListenerContext,
  presser: Presser,
  value: string | undefined,
): Promise<void> {
  const { sprintId, day } = read(sprintDayValue, value);
  const where = day === undefined ? { sprintId } : { sprintId, day };
  await openForm(context.client, presser.triggerId, await answerFormFor(context, presser, where));
}

/** The button holds the answers with their explanation. */
async function recordExplained(
  { useCases }: ListenerContext,
  presser: Presser,
  value: string | undefined,
): Promise<void> {
  await presser.replace(
    outcomeMessage(await useCases.recordAnswers(presser.actor, read(answersValue, value))),
  );
}

/** What follows an answer that was not given in a form. */
export function outcomeMessage(outcome: AnswerOutcome) {
  return outcome.kind === 'recorded' ? dailyPromptMessage(outcome.prompt) : growthMessage(outcome);
}

function opens(make: PlaceFormMaker): ButtonHandler {
  return async (context, presser, value) => {
    await openForm(context.client, presser.triggerId, await make(context, presser, placeIn(value)));
  };
}

/** A planning question that needs no numbers. */
function asks(question: AdviceQuestion): ButtonHandler {
  return (context, presser, value) => tellAdvice(context, presser, { place: placeIn(value) }, question);
}

/** The team's channel, wherever the button was pressed. */
function placeIn(value: string | undefined): Place {
  return { channelId: read(placeValue, value).channelId, isDirect: false };
}

function withDay(value: string | undefined): { sprintId: string; day: string } {
  const { sprintId, day } = read(sprintDayValue, value);
  if (day === undefined) throw new StaleControl('button without a day');
  return { sprintId, day };
}

function read<T>(schema: z.ZodType<T>, value: string | undefined): T {
  const decoded = decodeValue(schema, value);
  if (decoded === undefined) throw new StaleControl('button value');
  return decoded;
}
