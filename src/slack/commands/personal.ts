/** What somebody chooses for themselves: when they are asked, the morning digest, verdicts as direct messages. */
import { encodeValue, verdictsValue } from '../button-values.ts';
import { teamContext } from '../form-contexts.ts';
import { ACTIONS } from '../ids.ts';
import { DIGEST_FIELDS, digestFormView, digestSetMessage } from '../views/digest-views.ts';
import { OWN_PROMPT_FIELDS, ownPromptFormView, ownPromptSetMessage } from '../views/own-prompt-views.ts';
import { directVerdictsReply } from '../views/verdict-message.ts';
import { type Command, command, readHeld, showFirstForm } from './command.ts';

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

export const digest: Command = command({
  word: 'digest',
  who: 'facilitator',
  run: async (context, caller, rest) => {
    if (rest === '') return showFirstForm(digest, context, caller);
    const { actor, place } = caller;
    const digestAt = rest.toLowerCase() === 'off' ? '' : rest;
    await caller.tell(digestSetMessage(await context.useCases.setDigest(actor, { place, digestAt })));
  },
  forms: [
    {
      name: 'digest',
      fields: DIGEST_FIELDS,
      make: async ({ useCases }, { actor, replyTo }, place) =>
        digestFormView(await useCases.digestForm(actor, place), replyTo),
      submit: async (useCases, { actor, fields, context }) => {
        const { teamId } = readHeld(teamContext, context);
        const digestAt = fields.text(DIGEST_FIELDS.digestAt);
        return {
          next: 'close',
          say: digestSetMessage(await useCases.setDigest(actor, { teamId, digestAt })),
        };
      },
    },
  ],
  inOverview: { row: 'sprint', when: ({ isFacilitator }) => isFacilitator },
});

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
