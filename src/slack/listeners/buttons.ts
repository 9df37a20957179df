/** Buttons on messages and on the home page, and live fields of forms: acknowledged at once, answered after. */
import type { App, RespondFn } from '@slack/bolt';
import type { Actor } from '../../app/team/team.ts';
import { StaleControl } from '../button-values.ts';
import type { Presser } from '../commands/command.ts';
import { BUTTONS, FORMS } from '../commands/commands.ts';
import { buttonPress, type FormChange, formChange } from '../door/incoming.ts';
import { answerOnce, triggerKey } from './answer-once.ts';
import { ON_HOME, placeOf, replacing, replyPlace, tellIn, tellsOnly } from './asker.ts';
import { failureMessage, failureOf } from './failure-words.ts';
import { FormFields } from './form-fields.ts';
import { contextOf, type ListenerContext } from './listener-context.ts';
import { refilledForm } from './refilled-form.ts';

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

/**
 * A live field of an open form was changed: the form is shown again as it is now. Nothing is written, so a repetition does no
 * harm; and where one change overtakes another, the platform's hash makes the later one win.
 */
async function showChange(context: ListenerContext, { user, view }: FormChange): Promise<void> {
  const { client, useCases, logger, workspaceId } = context;
  const change = FORMS.get(view.callback_id)?.change;
  if (!change) return;
  const during = `change ${view.callback_id}`;
  const sent = {
    actor: { workspaceId, userId: user.id },
    fields: new FormFields(view),
    context: view.private_metadata,
  };
  const shown = await change(useCases, sent).catch((error: unknown) =>
    refilledForm(view, failureMessage(failureOf(error, logger, during))),
  );
  try {
    await client.views.update({ view_id: view.id, view: shown, ...(view.hash ? { hash: view.hash } : {}) });
  } catch (error) {
    // Closed or changed again meanwhile: then what was said of it is of no use any more.
    logger.info({ err: error, during }, 'A form was not brought up to date.');
  }
}
