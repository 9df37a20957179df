/**
 * A live field of an open form was changed: the form is shown again as it is now. Nothing is written, so a repetition does no
 * harm; and where one change overtakes another, the platform's hash makes the later one win.
 */
import { FORMS } from '../commands/commands.ts';
import type { FormChange } from '../door/incoming.ts';
import { failureMessage, failureOf } from './failure-words.ts';
import { FormFields } from './form-fields.ts';
import type { ListenerContext } from './listener-context.ts';
import { refilledForm } from './refilled-form.ts';

export async function showChange(context: ListenerContext, { user, view }: FormChange): Promise<void> {
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
