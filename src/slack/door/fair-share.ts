/**
 * Lets nobody ask for more than their share: what goes beyond it is refused, with the time to wait, before any work is
 * done. Each process counts for itself. Must lose nothing that was typed: a form stays open as it is.
 */
import type { AnyMiddlewareArgs, Middleware } from '@slack/bolt';
import { z } from 'zod';
import { Refusal } from '../../app/refusal.ts';
import type { Cost } from '../commands/command.ts';
import { BUTTONS, FORMS, parseCommand, withoutSlash } from '../commands/commands.ts';
import { tellIn } from '../listeners/asker.ts';
import { failureMessage, failureOf } from '../listeners/failure-words.ts';
import { fieldErrors } from '../listeners/field-errors.ts';
import { FormFields } from '../listeners/form-fields.ts';
import { contextOf } from '../listeners/listener-context.ts';
import { plainWords } from '../plain-words.ts';
import { refusedFormView } from '../views/trouble-views.ts';
import {
  buttonPress,
  formSubmission,
  globalShortcut,
  homeOpened,
  mentionEvent,
  messageEvent,
  messageShortcut,
  slashCommand,
} from './incoming.ts';
import { RequestAllowance } from './request-allowance.ts';

type Ack = (answer?: unknown) => Promise<void>;

/** @param perMinute requests of one person; 0: as many as they like */
export function fairShare(perMinute: number): Middleware<AnyMiddlewareArgs> {
  const allowance = new RequestAllowance(perMinute, () => performance.now());
  return async ({ body, next, context: bolt, ...rest }) => {
    const asked = perMinute > 0 ? askedFor(body) : undefined;
    if (!asked) return next();
    const context = contextOf(bolt);
    const actor = { workspaceId: context.workspaceId, userId: asked.userId };
    const taken = allowance.take(`${actor.workspaceId} ${actor.userId}`, asked.cost);
    if (taken.isAllowed) return next();
    const { ack } = rest as { ack?: Ack };
    const refusal = new Refusal('too-much-at-once', { waitSeconds: taken.waitSeconds });
    const failure = failureOf(refusal, context.logger, 'counting requests');
    if (taken.isFirst) context.logger.warn('Somebody asks for more than their share.');
    const message = failureMessage(failure);
    if (isCommand(body)) return ack?.({ response_type: 'ephemeral', ...message });
    const form = formSubmission.safeParse(body);
    if (form.success) {
      const { blockIds } = new FormFields(form.data.view);
      const errors = await fieldErrors(failure, blockIds, actor, context.directory);
      if (errors) return ack?.({ response_action: 'errors', errors });
      return ack?.({ response_action: 'update', view: refusedFormView(message) });
    }
    await ack?.();
    // An answer of ours to each of a script's requests would double what it does.
    if (!taken.isFirst || isHomePage(body)) return;
    const { thread_ts } = (body as { event?: { thread_ts?: string } }).event ?? {};
    await tellIn(context.client, actor, channelOf(body), message, thread_ts).catch((err: unknown) =>
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

const LIGHT = 1;
const HEAVY = 5;

function costOf(asked: { readonly cost?: Cost } | undefined): number {
  return asked?.cost === 'heavy' ? HEAVY : LIGHT;
}

interface AskedFor {
  readonly userId: string;
  readonly cost: number;
}

/** What a request costs, as its command declares it. @returns undefined for what no person asks for, and for what no listener does anything about */
export function askedFor(body: unknown): AskedFor | undefined {
  const command = slashCommand.safeParse(body);
  if (command.success) {
    const { user_id, text } = command.data;
    return { userId: user_id, cost: costOfWords(text) };
  }
  const press = buttonPress.safeParse(body);
  if (press.success) {
    const { user, view, actions } = press.data;
    if (view?.type === 'modal') return undefined;
    const cost = costOf(BUTTONS.get(actions[0]?.action_id ?? ''));
    return { userId: user.id, cost };
  }
  const shortcut = z.union([globalShortcut, messageShortcut]).safeParse(body);
  if (shortcut.success) return { userId: shortcut.data.user.id, cost: LIGHT };
  const form = formSubmission.safeParse(body);
  if (form.success) {
    const { user, view } = form.data;
    return { userId: user.id, cost: costOf(FORMS.get(view.callback_id)) };
  }
  const home = homeOpened.safeParse(body);
  if (home.success) {
    return { userId: home.data.event.user, cost: LIGHT };
  }
  const message = z.union([messageEvent, mentionEvent]).safeParse(body);
  if (!message.success) return undefined;
  const { event } = message.data;
  if (event.type === 'message' && event.channel_type !== 'im') return undefined;
  // Not what bots write, this one included: nobody would be answered.
  const { user, bot_id, text } = event;
  if (user === undefined || bot_id !== undefined) return undefined;
  return { userId: user, cost: costOfWords(text ?? '') };
}

function costOfWords(text: string): number {
  const words = plainWords(text).replaceAll(/<@\w+>[\s,:]*/g, '');
  const { command } = parseCommand(withoutSlash(words));
  return costOf(command);
}
