/** Whether somebody gets the verdicts in their direct messages as well. */
import { encodeValue, verdictsValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import { directVerdictsReply } from '../views/verdict-message.ts';
import { command, readHeld } from './command.ts';

export const directVerdicts = command({
  word: 'verdict',
  who: 'team-and-owner',
  run: async ({ useCases }, { actor, place, tell }, rest) => {
    const word = rest.toLowerCase();
    const chosen =
      word === 'on' || word === 'off'
        ? await useCases.chooseDirectVerdicts(actor, { place, isWanted: word === 'on' })
        : await useCases.directVerdicts(actor, { place });
    await tell(directVerdictsReply(chosen));
  },
  buttons: {
    [ACTIONS.chooseVerdicts]: {
      press: async ({ useCases }, { actor, tell }, held) => {
        const { channelId, isWanted } = readHeld(verdictsValue, held);
        const place = { channelId, isDirect: false };
        await tell(directVerdictsReply(await useCases.chooseDirectVerdicts(actor, { place, isWanted })));
      },
    },
  },
  inOverview: {
    row: 'sprint',
    // Facilitators read of it with the morning digest.
    when: ({ isFacilitator, isProductOwner }) => isProductOwner && !isFacilitator,
    actionId: ACTIONS.chooseVerdicts,
    value: ({ team, getsVerdicts }) => encodeValue({ channelId: team.channelId, isWanted: !getsVerdicts }),
    label: ({ getsVerdicts }) => (getsVerdicts ? 'overview-no-verdict-button' : 'overview-verdict-button'),
  },
});
