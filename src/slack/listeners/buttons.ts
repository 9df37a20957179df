/** Buttons on messages and on the home page, and live fields of forms: acknowledged at once, answered after. */
import type { App, RespondFn } from '@slack/bolt';
import type { Actor } from '../../app/team/team.ts';
import { StaleControl } from '../button-values.ts';
import type { Presser } from '../commands/command.ts';
import { BUTTONS } from '../commands/commands.ts';
import { buttonPress, formChange } from '../door/incoming.ts';
import { answerOnce, triggerKey } from './answer-once.ts';
import { ON_HOME, placeOf, replacing, replyPlace, tellIn, tellsOnly } from './asker.ts';
import { showChange } from './form-changes.ts';
import { contextOf, type ListenerContext } from './listener-context.ts';

export function listenToButtons(app: App): void {
  app.action({ type: 'block_actions' }, async ({ ack, body, respond, context: bolt }) => {
    await ack();
    const context = contextOf(bolt);
    const sent = buttonPress.safeParse(body);
    const action = sent.data?.actions[0];
    if (!sent.success || !action) return;
    const { user, trigger_id, channel, view, response_url, container } = sent.data;
    if (view?.type === 'modal') {
      const change = formChange.safeParse(body);
      if (change.success) await showChange(context, change.data);
      return;
    }
    const actor = { workspaceId: context.workspaceId, userId: user.id };
    const reply = response_url === undefined ? undefined : (respond as RespondFn);
    const place = channel ? placeOf(channel.id) : undefined;
    const threadTs = place?.isDirect ? undefined : container?.thread_ts;
    const presser: Presser = {
      actor,
      place,
      replyTo: channel ? replyPlace(channel.id, threadTs) : undefined,
      triggerId: trigger_id ?? '',
      tell: tellsOnly(context, actor, channel?.id, reply, threadTs),
      replace: replacing(context, actor, channel?.id, reply, threadTs),
      ...(view?.type === 'home' ? shownOnHome(context, actor) : {}),
    };
    const button = BUTTONS.get(action.action_id);
    const during = `button ${button ? action.action_id : 'unknown'}`;
    await answerOnce(context, presser, during, triggerKey(trigger_id), async () => {
      if (!button) throw new StaleControl('button');
      await button.press(context, presser, action.value);
    });
  });
}

/** On the home page, the page itself shows what was done. */
function shownOnHome(
  context: ListenerContext,
  actor: Actor,
): Pick<Presser, 'replyTo' | 'replace' | 'isHomeFresh'> {
  let isFresh = false;
  return {
    replyTo: ON_HOME,
    replace: async (message) => {
      isFresh = await context.refreshHome(actor);
      if (!isFresh) await tellIn(context.client, actor, undefined, message);
    },
    isHomeFresh: () => isFresh,
  };
}
