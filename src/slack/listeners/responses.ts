/** Answers through the address that came with a command or a press, and directly when that fails. */
import type { RespondFn } from '@slack/bolt';
import type { Actor } from '../../app/team/team.ts';
import type { MessageView } from '../views/message-view.ts';
import { type Asker, tellIn } from './asker.ts';
import type { ListenerContext } from './listener-context.ts';

/** Shows a message to the actor only. */
export function tellsOnly(
  context: ListenerContext,
  actor: Actor,
  channelId: string | undefined,
  respond: RespondFn | undefined,
): Asker['tell'] {
  return answering(context, actor, channelId, respond, false);
}

/** Puts a message in place of the one that was answered. */
export function replacing(
  context: ListenerContext,
  actor: Actor,
  channelId: string | undefined,
  respond: RespondFn | undefined,
): Asker['replace'] {
  return answering(context, actor, channelId, respond, true);
}

function answering(
  context: ListenerContext,
  actor: Actor,
  channelId: string | undefined,
  respond: RespondFn | undefined,
  inPlace: boolean,
): (message: MessageView) => Promise<void> {
  return async (message) => {
    if (respond) {
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
    await tellIn(context.client, actor, channelId, message);
  };
}
