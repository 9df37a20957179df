/**
 * Forms that were sent off. The answer to the platform is the form's own: field errors, a next step, or that
 * it closes. It must come within three seconds; when the use case takes longer, the form says that work goes
 * on and is brought up to date afterwards, with what was typed if it was refused.
 */
import { createHash } from 'node:crypto';
import type { AckFn, App, ViewResponseAction } from '@slack/bolt';
import type { ModalView } from '@slack/types';
import { z } from 'zod';
import { Refusal } from '../../app/refusal.ts';
import type { Actor } from '../../app/team/team.ts';
import {
  AlreadyWritten,
  asOneRequest,
  GivenUp,
  mayHaveWritten,
  settleWritten,
} from '../../app/written-once.ts';
import { mrkdwn } from '../../words/say.ts';
import { decodeValue, StaleControl } from '../button-values.ts';
import type { FormOutcome } from '../commands/command.ts';
import { FORMS } from '../commands/commands.ts';
import { type FormSubmission, formSubmission } from '../door/incoming.ts';
import { DOWNLOAD_BYTES_MAX, type SentFile } from '../files/download-file.ts';
import type { MessageView } from '../views/message-view.ts';
import {
  doneFormView,
  refusalMessage,
  refusedFormView,
  sentTwiceMessage,
  troubleFormView,
  workingFormView,
} from '../views/trouble-views.ts';
import { ON_HOME, tellIn } from './asker.ts';
import { type Failure, failureMessage, failureOf, storeTroubleOf } from './failure-words.ts';
import { fieldErrors } from './field-errors.ts';
import { FormFields } from './form-fields.ts';
import { contextOf, type ListenerContext } from './listener-context.ts';
import { refilledForm } from './refilled-form.ts';

type Ack = AckFn<ViewResponseAction>;

type FormResult =
  | { readonly kind: 'repeated' }
  | { readonly kind: 'outcome'; readonly outcome: FormOutcome; readonly hasWritten: boolean }
  | {
      readonly kind: 'failure';
      readonly failure: Failure;
      readonly errors: Record<string, string> | undefined;
      readonly hasWritten: boolean;
    };

export function listenToForms(app: App): void {
  app.view({ type: 'view_submission' }, async ({ ack, body, context: bolt }) => {
    const sent = formSubmission.safeParse(body);
    const answer = ack as Ack;
    if (sent.success) await answerForm(contextOf(bolt), sent.data, answer);
    else await answer();
  });
  app.view({ type: 'view_closed' }, async ({ ack }) => ack());
}

/**
 * The same when a form is sent off again, because its answer was lost on the way to the person: the platform gives that
 * another trigger. Another when the form has changed in between: then it asks for the next step.
 */
function formKey({ id, callback_id, private_metadata, blocks }: FormSubmission['view']): string {
  const asked = JSON.stringify([callback_id, private_metadata, blocks.map((block) => block.block_id)]);
  return `form:${id}:${createHash('sha256').update(asked).digest('base64url')}`;
}

async function answerForm(context: ListenerContext, sent: FormSubmission, ack: Ack): Promise<void> {
  const during = `form ${FORMS.has(sent.view.callback_id) ? sent.view.callback_id : 'unknown'}`;
  const key = formKey(sent.view);
  // Separate in each workspace, even with the same mark.
  const ownKey = `${context.workspaceId} ${key}`;
  const work = asOneRequest(ownKey, () => formResult(context, sent, during, key));
  const inTime = await Promise.race([work, context.answerDue()]);
  if (inTime) await answerInTime(inTime, ack);
  else await ack({ response_action: 'update', view: workingFormView() });
  const result = await work;
  context.logger.info({ during, outcome: result.kind, inTime: inTime !== undefined }, 'A form was sent off.');
  const unseen = inTime ? undefined : await showLate(context, sent, result);
  const actor = actorOf(context, sent);
  const replyTo = replyToOf(sent.view.private_metadata);
  const message = closingMessage(result) ?? unseen;
  const refreshed = result.kind !== 'repeated' && result.hasWritten && context.refreshHome(actor);
  if (!message || (replyTo === ON_HOME && isOnHome(result) && (await refreshed))) return;
  const [channelId, threadTs] = replyTo?.split(':') ?? [];
  await tellIn(context.client, actor, channelId, message, threadTs).catch((error: unknown) =>
    context.logger.error({ during, err: error }, 'Nobody could be told.'),
  );
}

/** Whether the home page shows what was done. */
function isOnHome(result: FormResult): boolean {
  return result.kind === 'outcome' && result.outcome.next === 'close' && result.outcome.isOnHome === true;
}

/** What the person reads when the form closes; undefined when it stays open. */
function closingMessage(result: FormResult): MessageView | undefined {
  if (result.kind !== 'outcome' || result.outcome.next === 'show') return undefined;
  const { outcome } = result;
  return outcome.next === 'close' && outcome.isShown ? undefined : outcome.say;
}

/** Puts the result in place of "still working". @returns what to send instead when the form is gone */
async function showLate(
  { client, logger }: ListenerContext,
  sent: FormSubmission,
  result: FormResult,
): Promise<MessageView | undefined> {
  const view = lateView(result, sent);
  if (!view) return undefined;
  try {
    await client.views.update({ view_id: sent.view.id, view });
    return undefined;
  } catch (error) {
    logger.warn({ err: error }, 'A form was gone before its answer came.');
    if (result.kind === 'failure') return failureMessage(result.failure);
    return refusalMessage({ what: mrkdwn('refusal-form-closed'), fix: mrkdwn('refusal-form-closed-fix') });
  }
}

/** Never throws: what went wrong is part of the result. */
async function formResult(
  context: ListenerContext,
  sent: FormSubmission,
  during: string,
  key: string,
): Promise<FormResult> {
  const { useCases, logger, directory } = context;
  const fields = new FormFields(sent.view);
  const actor = actorOf(context, sent);
  const form = FORMS.get(sent.view.callback_id);
  try {
    if (!form) throw new StaleControl('form');
    const held = { actor, fields, context: sent.view.private_metadata };
    const submit = () => form.submit(useCases, held, context);
    const files = form.files?.(held);
    const outcome = await (files
      ? context.inTurn({ userId: actor.userId, bytes: bytesOf(files) }, submit)
      : submit());
    return { kind: 'outcome', outcome, hasWritten: mayHaveWritten() };
  } catch (error) {
    if (error instanceof AlreadyWritten) return { kind: 'repeated' };
    // What is wrong with these is wrong with their repetition too.
    const isRefused = error instanceof Refusal || error instanceof StaleControl;
    const isFinal = error instanceof GivenUp || isRefused;
    // What the database took nothing of may be sent off once more from the same form, which is then carried out.
    const isSentAgain = storeTroubleOf(error) !== undefined;
    if (!isFinal && !form?.recordsNothing) {
      await settleWritten(async () => !isSentAgain && context.giveUp(key));
    }
    const failure = failureOf(error, logger, during);
    const errors = await fieldErrors(failure, fields.blockIds, actor, directory);
    return { kind: 'failure', failure, errors, hasWritten: mayHaveWritten() };
  }
}

/** Of one that was given before and whose size isn't known, as much as it may be. */
function bytesOf(files: readonly SentFile[]): number {
  return files.reduce((sum, { sizeBytes }) => sum + (sizeBytes || DOWNLOAD_BYTES_MAX), 0);
}

async function answerInTime(result: FormResult, ack: Ack): Promise<void> {
  // What it was to record is recorded, so the person is done with it.
  if (result.kind === 'repeated') return ack({ response_action: 'clear' });
  if (result.kind === 'failure') {
    const { failure, errors } = result;
    if (errors) return ack({ response_action: 'errors', errors });
    return ack({ response_action: 'update', view: failureView(failure) });
  }
  const { outcome } = result;
  switch (outcome.next) {
    case 'close':
      return ack();
    case 'close-all':
      return ack({ response_action: 'clear' });
    case 'show':
      return ack({ response_action: outcome.how === 'on top' ? 'push' : 'update', view: outcome.view });
  }
}

/** What takes the place of "still working". */
function lateView(result: FormResult, sent: FormSubmission): ModalView | undefined {
  if (result.kind === 'repeated') return doneFormView(sentTwiceMessage());
  if (result.kind === 'failure') {
    const { failure, errors } = result;
    return errors ? refilledForm(sent.view, failureMessage(failure)) : failureView(failure);
  }
  const { outcome } = result;
  return outcome.next === 'show' ? outcome.view : doneFormView(outcome.say);
}

function failureView(failure: Failure): ModalView {
  return failure.kind === 'trouble'
    ? troubleFormView(failure.errorId, failure.written)
    : refusedFormView(failureMessage(failure));
}

/** Any form may say where replies to it belong. */
const anyContext = z.looseObject({ replyTo: z.string().max(64).optional() });

/** Undefined as well when the context can't be read. */
function replyToOf(context: string): string | undefined {
  return decodeValue(anyContext, context)?.replyTo;
}

function actorOf({ workspaceId }: ListenerContext, { user }: FormSubmission): Actor {
  return { workspaceId, userId: user.id };
}
