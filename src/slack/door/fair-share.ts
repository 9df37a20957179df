/**
 * Lets nobody ask for more than their share: what goes beyond it is refused, with the time to wait, before any work is
 * done. Each process counts for itself. Must lose nothing that was typed: a form stays open as it is.
 */
import type { AnyMiddlewareArgs, Middleware } from '@slack/bolt';
import { Refusal } from '../../app/refusal.ts';
import { tellIn } from '../listeners/asker.ts';
import { contextOf } from '../listeners/context-of.ts';
import { failureMessage, failureOf } from '../listeners/failure-words.ts';
import { fieldErrors } from '../listeners/field-errors.ts';
import { FormFields } from '../listeners/form-fields.ts';
import { refusedFormView } from '../views/trouble-views.ts';
import { formSubmission } from './incoming.ts';
import { RequestAllowance } from './request-allowance.ts';
import { askedFor } from './request-cost.ts';

type Ack = (answer?: unknown) => Promise<void>;

/** @param perMinute requests of one person; 0: as many as they like */
export function fairShare(
  perMinute: number,
  nowMs: () => number = () => performance.now(),
): Middleware<AnyMiddlewareArgs> {
  const allowance = new RequestAllowance(perMinute, nowMs);
  return async ({ body, next, context: bolt, ...rest }) => {
    const asked = perMinute > 0 ? askedFor(body) : undefined;
    if (!asked) return next();
    const taken = allowance.take(`${asked.workspaceId} ${asked.userId}`, asked.cost);
    if (taken.isAllowed) return next();
    const { ack } = rest as { ack?: Ack };
    const context = contextOf(bolt);
    const refusal = new Refusal('too-much-at-once', { waitSeconds: taken.waitSeconds });
    const failure = failureOf(refusal, context.logger, 'counting requests');
    if (taken.isFirst) context.logger.warn('Somebody asks for more than their share.');
    const message = failureMessage(failure);
    if (isCommand(body)) return ack?.({ response_type: 'ephemeral', ...message });
    const form = formSubmission.safeParse(body);
    if (form.success) {
      const { blockIds } = new FormFields(form.data.view);
      const errors = await fieldErrors(failure, blockIds, asked, context.directory);
      if (errors) return ack?.({ response_action: 'errors', errors });
      return ack?.({ response_action: 'update', view: refusedFormView(message) });
    }
    await ack?.();
    // An answer of ours to each of a script's requests would double what it does.
    if (!taken.isFirst || isHomePage(body)) return;
    await tellIn(context.client, asked, channelOf(body), message).catch((err: unknown) =>
      context.logger.warn({ err }, 'Nobody could be told.'),
    );
  };
}

function isCommand(body: unknown): boolean {
  return typeof (body as { command?: unknown }).command === 'string';
}

/** It keeps what it last showed. */
function isHomePage(body: unknown): boolean {
  return (body as { event?: { type?: unknown } }).event?.type === 'app_home_opened';
}

function channelOf(body: unknown): string | undefined {
  const { channel, event } = body as { channel?: { id?: string } | null; event?: { channel?: string } };
  return channel?.id ?? event?.channel;
}
