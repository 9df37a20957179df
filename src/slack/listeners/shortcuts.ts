/**
 * What people choose from the platform's menu of shortcuts, wherever they are: acknowledged at once, then answered in a form,
 * since there is no channel and no address to answer to.
 */
import type { App } from '@slack/bolt';
import type { Presser } from '../commands/command.ts';
import { SHORTCUT_ACTIONS } from '../commands/commands.ts';
import { globalShortcut, messageShortcut } from '../door/incoming.ts';
import type { MessageView } from '../views/message-view.ts';
import { refusedFormView } from '../views/trouble-views.ts';
import { answerOnce, triggerKey } from './answer-once.ts';
import { openForm, placeOf, replyPlace, tellIn } from './asker.ts';
import { contextOf } from './listener-context.ts';

export function listenToShortcuts(app: App): void {
  app.shortcut(/.*/, async ({ ack, body, context: bolt }) => {
    await ack();
    const onMessage = messageShortcut.safeParse(body);
    const sent = onMessage.success ? onMessage : globalShortcut.safeParse(body);
    const shortcut = sent.success ? SHORTCUT_ACTIONS.get(sent.data.callback_id) : undefined;
    if (!sent.success || !shortcut) return;
    const context = contextOf(bolt);
    const { user, trigger_id: triggerId, callback_id } = sent.data;
    const actor = { workspaceId: context.workspaceId, userId: user.id };
    const tell = async (message: MessageView): Promise<void> => {
      try {
        await openForm(context.client, triggerId, refusedFormView(message));
      } catch (error) {
        context.logger.info({ err: error }, 'An answer goes out directly: its form did not open.');
        await tellIn(context.client, actor, undefined, message);
      }
    };
    const channelId = onMessage.data?.channel.id;
    const place = channelId === undefined ? undefined : placeOf(channelId);
    const threadTs = place?.isDirect ? undefined : onMessage.data?.message.thread_ts;
    const replyTo = channelId && replyPlace(channelId, threadTs);
    const presser: Presser = { actor, place, replyTo, triggerId, tell, replace: tell };
    await answerOnce(context, presser, `shortcut ${callback_id}`, triggerKey(triggerId), () =>
      shortcut.choose(context, presser, onMessage.data),
    );
  });
}
