/** What is stored about the person who asks, never the one that a button names: shown, handed out or erased. Only ever their own. */
import { Refusal } from '../../app/refusal.ts';
import { personContext } from '../form-contexts.ts';
import { ACTIONS } from '../ids.ts';
import { type Asker, openForm } from '../listeners/asker.ts';
import type { ListenerContext } from '../listeners/listener-context.ts';
import {
  copyComment,
  copySentMessage,
  ERASE_FIELDS,
  erasedMessage,
  eraseFormView,
  privacyMessage,
  REMOVE_MESSAGES,
} from '../views/privacy-message.ts';
import { command, readHeld } from './command.ts';

export const privacy = command({
  word: 'privacy',
  who: 'anyone',
  cost: 'heavy',
  run: tellPrivacy,
  forms: [
    {
      name: 'erase',
      fields: ERASE_FIELDS,
      submit: async (useCases, { actor, fields, context }) => {
        readHeld(personContext, context);
        const removeMessages = fields.choices(ERASE_FIELDS.messages).includes(REMOVE_MESSAGES);
        return { next: 'close', say: erasedMessage(await useCases.erasePerson(actor, { removeMessages })) };
      },
    },
  ],
  buttons: {
    [ACTIONS.showPrivacy]: { press: tellPrivacy },
    [ACTIONS.sendMyCopy]: {
      cost: 'heavy',
      press: async ({ useCases, shareFiles }, { actor, tell }) => {
        const copy = await useCases.personalCopy(actor);
        await shareFiles({ userId: actor.userId, comment: copyComment(copy), files: [copy] });
        await tell(copySentMessage(copy));
      },
    },
    [ACTIONS.openEraseForm]: {
      press: async ({ useCases, client }, { actor, triggerId, replyTo }) => {
        const { kinds } = await useCases.privacyOverview(actor);
        if (kinds.length === 0) throw new Refusal('nothing-stored', {});
        await openForm(client, triggerId, eraseFormView(replyTo));
      },
    },
  },
});

async function tellPrivacy({ useCases }: ListenerContext, { actor, tell }: Asker): Promise<void> {
  await tell(privacyMessage(await useCases.privacyOverview(actor)));
}
