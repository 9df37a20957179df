/** When a member wants to be asked. */
import { OWN_PROMPT_FIELDS, ownPromptFormView, ownPromptSetMessage } from '../views/own-prompt-views.ts';
import { type Command, command, showFirstForm } from './command.ts';

/** Takes the member back to the team's time. */
const TEAM = 'team';
/** `me at 10:30`, `at 10:30` */
const FILLERS = /^(?:me\s+)?(?:at\s+)?/i;
/** The time, with the half of the day that may stand apart from it, and the zone. */
const TIME_THEN_ZONE = /^(\S+(?:\s+[ap]\.?m\b\.?)?)\s*(.*)$/i;

export const ask: Command = command({
  word: 'ask',
  who: 'member',
  run: async (context, caller, rest) => {
    const words = rest.replace(FILLERS, '').trim();
    if (words === '') return showFirstForm(ask, context, caller);
    const [, at = '', zone = ''] = TIME_THEN_ZONE.exec(words) ?? [];
    const timeZone = zone.split(/\s+/).join('_');
    const input = words.toLowerCase() === TEAM ? { at: '', timeZone: '' } : { at, timeZone };
    await caller.tell(ownPromptSetMessage(await context.useCases.chooseOwnPrompt(caller.actor, input)));
  },
  forms: [
    {
      name: 'own-prompt',
      fields: OWN_PROMPT_FIELDS,
      make: async ({ useCases }, { actor, replyTo }) =>
        ownPromptFormView(await useCases.ownPromptForm(actor), replyTo),
      submit: async (useCases, { actor, fields }) => {
        const at = fields.text(OWN_PROMPT_FIELDS.at);
        const timeZone = fields.text(OWN_PROMPT_FIELDS.timeZone);
        const set = await useCases.chooseOwnPrompt(actor, { at, timeZone });
        return { next: 'close', say: ownPromptSetMessage(set), isOnHome: true };
      },
    },
  ],
});
