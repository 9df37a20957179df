/** What each word of the command leads to. Words bound to handlers only. */
import type { ModalView } from '@slack/types';
import type { Problem } from '../../app/input-problem.ts';
import { Refusal } from '../../app/refusal.ts';
import type { Place } from '../../app/team/place.ts';
import { isDay } from '../../sprint/calendar.ts';
import type { CommandWord } from '../command-table.ts';
import { baselineNamedMessage } from '../views/baseline-named-message.ts';
import {
  cardsMessage,
  droppedMessage,
  pulledMessage,
  reopenedCardMessage,
  takenMessage,
} from '../views/cards/card-messages.ts';
import { forecastQuestionMessage } from '../views/forecast-form-view.ts';
import { helpMessage } from '../views/help.ts';
import { overviewMessage } from '../views/overview.ts';
import { sprintReopenedReply } from '../views/sprint-change-messages.ts';
import { valueRecordedMessage } from '../views/value-recorded-message.ts';
import { type Asker, openForm } from './asker.ts';
import { outcomeMessage } from './button-handlers.ts';
import {
  answerFormFor,
  baselineFormFor,
  cancelFormFor,
  closeFormFor,
  dropFormFor,
  forecastFormFor,
  importFormFor,
  measuresFormFor,
  planFormFor,
  pullFormFor,
  setupFormFor,
  valueFormFor,
} from './form-makers.ts';
import type { Reading } from './guarded.ts';
import { handOutExport } from './hand-out-export.ts';
import type { ListenerContext } from './listener-context.ts';
import { parseForecastQuestion } from './parse-forecast-question.ts';
import { parseRangeQuestion } from './parse-range-question.ts';
import { tellAdvice } from './tell-advice.ts';
import { tellPrivacy } from './tell-privacy.ts';
import { readStatus } from './tell-status.ts';

/** A person who typed the command, in a place. */
export type Caller = Asker & { readonly place: Place };

export type CommandHandler = (context: ListenerContext, caller: Caller, rest: string) => Promise<void>;

/** What people ask for most, and wait for: it is read before it is known whether the request is a repetition. */
export const READING_HANDLERS = {
  status: (context, caller) => readStatus(context, caller, caller.place),
} satisfies Partial<Record<CommandWord, (context: ListenerContext, caller: Caller) => ReturnType<Reading>>>;

export type ReadingWord = keyof typeof READING_HANDLERS;

export const COMMAND_HANDLERS: Readonly<Record<Exclude<CommandWord, ReadingWord>, CommandHandler>> = {
  answer: async (context, caller, rest) => {
    const { actor, place } = caller;
    if (!rest.includes(':')) {
      return showForm(context, caller, () => answerFormFor(context, caller, { place, ...dayIn(rest) }));
    }
    const outcome = await context.useCases.answerInWords(actor, { text: rest, place, numbering: 'sprint' });
    await caller.tell(outcomeMessage(outcome));
  },

  cards: async ({ useCases }, caller, rest) => {
    const from = firstNumberIn(rest);
    await caller.tell(cardsMessage(await useCases.listCards(caller.actor, caller.place), from));
  },

  pull: async (context, caller, rest) => {
    const { useCases } = context;
    if (rest === '') return showForm(context, caller, () => pullFormFor(context, caller, caller.place));
    await caller.tell(
      pulledMessage(await useCases.pullLine(caller.actor, { place: caller.place, line: rest })),
    );
  },

  take: async ({ useCases }, caller, rest) => {
    if (rest === '') throw missing('take', { code: 'which-card' }, '3');
    await caller.tell(
      takenMessage(await useCases.takeCard(caller.actor, { place: caller.place, reference: rest })),
    );
  },

  drop: async (context, caller, rest) => {
    const { useCases } = context;
    if (rest === '') return showForm(context, caller, () => dropFormFor(context, caller, caller.place));
    const { reference, reason } = referenceAndReason(rest);
    const dropped = await useCases.dropCard(caller.actor, { place: caller.place, reference, reason });
    await caller.tell(droppedMessage(dropped, reason));
  },

  reopen: async ({ useCases }, caller, rest) => {
    const { actor, place } = caller;
    if (rest === '') return caller.tell(sprintReopenedReply(await useCases.reopenSprint(actor, { place })));
    await caller.tell(reopenedCardMessage(await useCases.reopenCard(actor, { place, reference: rest })));
  },

  range: (context, caller, rest) =>
    tellAdvice(context, caller, { place: caller.place }, parseRangeQuestion(rest)),

  odds: (context, caller) => tellAdvice(context, caller, { place: caller.place }, { about: 'odds' }),

  forecast: async (context, caller, rest) => {
    const { actor, place, triggerId } = caller;
    if (rest !== '') return tellAdvice(context, caller, { place }, parseForecastQuestion(rest));
    if (triggerId !== undefined) {
      return openForm(context.client, triggerId, await forecastFormFor(context, caller, place));
    }
    await caller.tell(forecastQuestionMessage(await context.useCases.forecastForm(actor, { place })));
  },

  history: (context, caller) => tellAdvice(context, caller, { place: caller.place }, { about: 'history' }),

  value: async (context, caller, rest) => {
    const { actor, place } = caller;
    if (rest === '') return showForm(context, caller, () => valueFormFor(context, caller, place));
    await caller.tell(
      valueRecordedMessage(await context.useCases.recordValueLine(actor, { place, line: rest })),
    );
  },

  baseline: async (context, caller, rest) => {
    const { actor, place } = caller;
    if (rest === '') return showForm(context, caller, () => baselineFormFor(context, caller, place));
    const sprint = rest.toLowerCase() === 'first' ? 'first' : { sprintName: rest };
    await caller.tell(baselineNamedMessage(await context.useCases.nameBaseline(actor, { place, sprint })));
  },

  plan: (context, caller) => showForm(context, caller, () => planFormFor(context, caller, caller.place)),
  close: (context, caller) => showForm(context, caller, () => closeFormFor(context, caller, caller.place)),
  cancel: (context, caller) => showForm(context, caller, () => cancelFormFor(context, caller, caller.place)),
  import: (context, caller) => showForm(context, caller, () => importFormFor(context, caller, caller.place)),
  export: (context, caller) => handOutExport(context, caller, caller.place),
  setup: (context, caller) => showForm(context, caller, () => setupFormFor(context, caller, caller.place)),
  'setup measures': (context, caller) =>
    showForm(context, caller, () => measuresFormFor(context, caller, caller.place)),
  privacy: tellPrivacy,
  help: (_context, caller) => caller.tell(helpMessage()),
};

/** The command alone: what the caller can do now. */
export async function tellOverview({ useCases }: ListenerContext, caller: Caller): Promise<void> {
  const { actor, place } = caller;
  const here = place.isDirect ? undefined : place.channelId;
  await caller.tell(overviewMessage(await useCases.overview(actor, place), here));
}

/** From words alone no form can be opened; then the buttons that can are shown. */
async function showForm(
  context: ListenerContext,
  caller: Caller,
  make: () => Promise<ModalView>,
): Promise<void> {
  if (caller.triggerId === undefined) return tellOverview(context, caller);
  await openForm(context.client, caller.triggerId, await make());
}

function dayIn(rest: string): { day?: string } {
  if (rest === '' || rest.toLowerCase() === 'today') return {};
  if (isDay(rest)) return { day: rest };
  throw missing('answer', { code: 'answer-day' }, '2026-11-04');
}

function firstNumberIn(rest: string): number | undefined {
  if (rest === '') return undefined;
  if (/^\d{1,4}$/.test(rest)) return Number(rest);
  throw missing('cards', { code: 'first-card' }, '40');
}

/** `3, no longer wanted` or `3 no longer wanted` */
function referenceAndReason(rest: string): { reference: string; reason: string } {
  const [, reference = rest, reason = ''] = /^([^\s,;:]+)[\s,;:]*([\s\S]*)$/.exec(rest) ?? [];
  return { reference, reason };
}

/** @param example what may follow the word */
function missing(command: CommandWord, problem: Problem, example: string): Refusal {
  return new Refusal('bad-argument', { command, problem, example });
}
