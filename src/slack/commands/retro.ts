/** The retrospective sheet. */
import { sprintValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import { retroMessage, retroSharedReply } from '../views/retro-message.ts';
import { command, readHeld } from './command.ts';

export const retro = command({
  word: 'retro',
  who: 'team-and-owner',
  run: async ({ useCases }, { actor, place, tell }, rest) => {
    await tell(retroMessage(await useCases.retroSheet(actor, { place, sprintName: rest })));
  },
  buttons: {
    [ACTIONS.shareRetro]: {
      press: async ({ useCases }, { actor, tell }, value) => {
        await useCases.shareRetro(actor, readHeld(sprintValue, value));
        await tell(retroSharedReply());
      },
    },
  },
});
