/** Makes each form for somebody: asks the use case what is in it. Nothing is opened here. */
import type { ModalView } from '@slack/types';
import type { Advice, AdviceQuestion } from '../../app/advice/advice.ts';
import { Refusal } from '../../app/refusal.ts';
import type { Place } from '../../app/team/place.ts';
import { answerFormView } from '../views/answering/answer-form.ts';
import { baselineFormView } from '../views/baseline-form-view.ts';
import { cancelFormView } from '../views/cancel-form-view.ts';
import { dropFormView, pullFormView } from '../views/cards/card-forms.ts';
import { closeFormView } from '../views/close-form-view.ts';
import { forecastFormView } from '../views/forecast-form-view.ts';
import { importFormView } from '../views/import-form-view.ts';
import { planFormView } from '../views/planning/plan-forms.ts';
import { eraseFormView } from '../views/privacy-message.ts';
import { rangeFormView } from '../views/range-form-view.ts';
import { measuresFormView, setupFormView } from '../views/team/team-forms.ts';
import { valueFormView } from '../views/value-form-view.ts';
import type { Asker } from './asker.ts';
import type { ListenerContext } from './listener-context.ts';

type FormMaker = (context: ListenerContext, asker: Asker, place: Place) => Promise<ModalView>;

export const setupFormFor: FormMaker = async ({ useCases }, { actor, replyTo }, place) =>
  setupFormView(await useCases.setupForm(actor, place), replyTo);

export const measuresFormFor: FormMaker = async ({ useCases }, { actor, replyTo }, place) =>
  measuresFormView(await useCases.measuresForm(actor, place), replyTo);

export const planFormFor: FormMaker = async ({ useCases }, { actor, replyTo }, place) =>
  planFormView(await useCases.planForm(actor, place), replyTo);

export const pullFormFor: FormMaker = async ({ useCases }, { actor, replyTo }, place) =>
  pullFormView(await useCases.pullForm(actor, place), replyTo);

export const dropFormFor: FormMaker = async ({ useCases }, { actor, replyTo }, place) =>
  dropFormView(await useCases.listCards(actor, place), replyTo);

export const closeFormFor: FormMaker = async ({ useCases }, { actor, replyTo }, place) =>
  closeFormView(await useCases.listCards(actor, place), replyTo);

export const cancelFormFor: FormMaker = async ({ useCases }, { actor, replyTo }, place) =>
  cancelFormView(await useCases.listCards(actor, place), replyTo);

export const valueFormFor: FormMaker = async ({ useCases }, { actor, replyTo }, place) =>
  valueFormView(await useCases.valueForm(actor, place), replyTo);

export const baselineFormFor: FormMaker = async ({ useCases }, { actor, replyTo }, place) =>
  baselineFormView(await useCases.baselineForm(actor, place), replyTo);

export const importFormFor: FormMaker = async ({ useCases }, { actor, replyTo }, place) =>
  importFormView(await useCases.importForm(actor, place), replyTo);

export const forecastFormFor: FormMaker = async ({ useCases }, { actor, replyTo }, place) =>
  forecastFormView(await useCases.forecastForm(actor, { place }), undefined, replyTo);

/** @throws Refusal when there is nothing to erase, or when it can't be done yet */
export async function eraseFormFor(
  { useCases }: ListenerContext,
  { actor, replyTo }: Asker,
): Promise<ModalView> {
  const { kinds, needFacilitator } = await useCases.privacyOverview(actor);
  if (kinds.length === 0) throw new Refusal('nothing-stored', {});
  if (needFacilitator.length > 0) throw new Refusal('last-facilitator', { teamNames: needFacilitator });
  return eraseFormView(replyTo);
}

/** The form with the numbers of the question before. */
export async function changeForecastFormFor(
  { useCases }: ListenerContext,
  { actor, replyTo }: Asker,
  teamId: string,
  asked: Extract<AdviceQuestion, { about: 'forecast' }>,
): Promise<ModalView> {
  return forecastFormView(await useCases.forecastForm(actor, { teamId }), asked, replyTo);
}

/** The form with the sprint of the question before; with the next sprint when that one is over by now. */
export async function changeRangeFormFor(
  { useCases }: ListenerContext,
  { actor, replyTo }: Asker,
  teamId: string,
  asked: Extract<AdviceQuestion, { about: 'range' }>,
): Promise<ModalView> {
  const ask = (question: AdviceQuestion): Promise<Advice> => useCases.askAdvice(actor, { teamId }, question);
  const advice = await ask(asked).catch((error: unknown) => {
    if (error instanceof Refusal && error.code === 'bad-input') return ask({ about: 'range' });
    throw error;
  });
  if (!('range' in advice))
    throw new TypeError('a question about the range was answered with something else');
  return rangeFormView(advice, replyTo);
}

export async function answerFormFor(
  { useCases }: ListenerContext,
  { actor, replyTo }: Asker,
  where: { readonly place?: Place; readonly sprintId?: string; readonly day?: string },
): Promise<ModalView> {
  return answerFormView(await useCases.answerForm(actor, where), undefined, replyTo);
}
