/** The morning digest of a facilitator. */
import { teamContext } from '../form-contexts.ts';
import { DIGEST_FIELDS, digestFormView, digestSetMessage } from '../views/digest-views.ts';
import { type Command, command, readHeld, showFirstForm } from './command.ts';

const OFF = 'off';

export const digest: Command = command({
  word: 'digest',
  who: 'facilitator',
  run: async (context, caller, rest) => {
    if (rest === '') return showFirstForm(digest, context, caller);
    const { actor, place } = caller;
    const digestAt = rest.toLowerCase() === OFF ? '' : rest;
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
