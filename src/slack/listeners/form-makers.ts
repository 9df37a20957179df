/** Makes each form for somebody: asks the use case what is in it. Nothing is opened here. */
import type { ModalView } from '@slack/types';
import type { Place } from '../../app/place.ts';
import { answerFormView } from '../views/answer-form-view.ts';
import { cancelFormView } from '../views/cancel-form-view.ts';
import { closeFormView } from '../views/close-form-view.ts';
import { dropFormView } from '../views/drop-form-view.ts';
import { measuresFormView } from '../views/measures-form-view.ts';
import { planFormView } from '../views/plan-form-view.ts';
import { pullFormView } from '../views/pull-form-view.ts';
import { setupFormView } from '../views/setup-form-view.ts';
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

export async function answerFormFor(
  { useCases }: ListenerContext,
  { actor, replyTo }: Asker,
  where: { readonly place?: Place; readonly sprintId?: string; readonly day?: string },
): Promise<ModalView> {
  return answerFormView(await useCases.answerForm(actor, where), undefined, replyTo);
}
