/** Somebody who did something, and the ways to answer so that only they see it. */

import type { RespondFn } from '@slack/bolt';
import type { ModalView } from '@slack/types';
import { WebAPIPlatformError, type WebClient } from '@slack/web-api';
import type { Place } from '../../app/team/place.ts';
import type { Actor } from '../../app/team/team.ts';
import type { MessageView } from '../views/message-view.ts';
import type { ListenerContext } from './listener-context.ts';

export interface Asker {
  readonly actor: Actor;
  /** Where it was done; undefined on the bot's home page. */
  readonly place: Place | undefined;
  /** Where replies to a form belong that is opened now. */
  readonly replyTo: string | undefined;
  /** Undefined when no form can be opened from here: nothing was pressed, words were said. */
  readonly triggerId: string | undefined;
  readonly tell: (message: MessageView) => Promise<void>;
  /** Shows the message in place of the one whose button was pressed; where that can't be, sends it. */
  readonly replace: (message: MessageView) => Promise<void>;
  /** Whether the request itself has brought the person's home page up to date. */
  readonly isHomeFresh?: () => boolean;
}

/** In place of a conversation: a form that was opened from the home page, which shows what comes of it. */
export const ON_HOME = 'home';

/** A conversation, or a thread in it, as a form keeps where its replies belong. */
export function replyPlace(channelId: string, threadTs: string | undefined): string {
  return threadTs === undefined ? channelId : `${channelId}:${threadTs}`;
}

/** Direct conversations have ids of their own kind. */
export function placeOf(channelId: string): Place {
  return { channelId, isDirect: channelId.startsWith('D') };
}

/** The platform's answers when somebody can't be reached in a place, though perhaps directly. */
const NOT_THERE = new Set([
  'channel_not_found',
  'not_in_channel',
  'user_not_in_channel',
  'is_archived',
  'restricted_action',
  'cannot_reply_to_message',
  'method_not_supported_for_channel_type',
]);

/**
 * Shows a message to one person where they are, and directly where that is not possible.
 *
 * @param channelId undefined: directly
 * @param threadTs of a thread with replies: in another one the platform doesn’t show what only one person sees
 */
export async function tellIn(
  client: WebClient,
  actor: Actor,
  channelId: string | undefined,
  message: MessageView,
  threadTs?: string,
): Promise<void> {
  if (channelId !== undefined && channelId !== ON_HOME) {
    const place = { channel: channelId, ...(threadTs === undefined ? {} : { thread_ts: threadTs }) };
    try {
      await client.chat.postEphemeral({ ...place, user: actor.userId, ...message });
      return;
    } catch (error) {
      if (!(error instanceof WebAPIPlatformError) || !NOT_THERE.has(error.data.error)) throw error;
    }
  }
  await client.chat.postMessage({ channel: actor.userId, ...message });
}

/** @throws when the platform refuses the form, most often because it took longer than three seconds. */
export async function openForm(client: WebClient, triggerId: string, view: ModalView): Promise<void> {
  await client.views.open({ trigger_id: triggerId, view });
}

/** Shows a message to the actor only. */
export function tellsOnly(
  context: ListenerContext,
  actor: Actor,
  channelId: string | undefined,
  respond: RespondFn | undefined,
  threadTs?: string,
): Asker['tell'] {
  return answering(context, actor, { channelId, threadTs }, respond, false);
}

/** Puts a message in place of the one that was answered. */
export function replacing(
  context: ListenerContext,
  actor: Actor,
  channelId: string | undefined,
  respond: RespondFn | undefined,
  threadTs?: string,
): Asker['replace'] {
  return answering(context, actor, { channelId, threadTs }, respond, true);
}

/** Answers through the address that came with a command or a press, and directly when that fails. */
function answering(
  context: ListenerContext,
  actor: Actor,
  { channelId, threadTs }: { readonly channelId: string | undefined; readonly threadTs: string | undefined },
  respond: RespondFn | undefined,
  inPlace: boolean,
): (message: MessageView) => Promise<void> {
  return async (message) => {
    // What it shows to one person only can't go into a thread.
    if (respond && (inPlace || threadTs === undefined)) {
      try {
        await respond(
          inPlace
            ? { replace_original: true, ...message }
            : { response_type: 'ephemeral', replace_original: false, ...message },
        );
        return;
      } catch (error) {
        // The address serves five times in half an hour.
        context.logger.info({ err: error }, 'An answer goes out directly: its address did not take it.');
      }
    }
    await tellIn(context.client, actor, channelId, message, threadTs);
  };
}
