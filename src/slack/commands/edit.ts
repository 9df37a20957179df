/** Correcting the plan of a running sprint: the sprint itself, and its cards. */
import { cardValue, encodeValue } from '../button-values.ts';
import { cardContext, sprintContext } from '../form-contexts.ts';
import { ACTIONS } from '../ids.ts';
import { openForm } from '../listeners/asker.ts';
import {
  cardEditedMessage,
  EDIT_CARD,
  EDIT_CARD_FIELDS,
  EDIT_SPRINT,
  EDIT_SPRINT_FIELDS,
  editCardFormView,
  editSprintFormView,
  sprintEditedMessage,
} from '../views/planning/edit-views.ts';
import { type Command, command, readHeld, showFirstForm, showForm } from './command.ts';

/** `3 title Tide table`: one part of a card in words. */
const PART_IN_WORDS = /^(\S+)\s+(title|link|key|estimate)(?:\s+([\s\S]*))?$/i;

export const edit: Command = command({
  word: 'edit',
  who: 'facilitator',
  run: async (context, caller, rest) => {
    if (rest === '') return showFirstForm(edit, context, caller);
    const { actor, place, replyTo } = caller;
    const [, reference = rest, part, became = ''] = PART_IN_WORDS.exec(rest) ?? [];
    if (part !== undefined) {
      const change = { [part.toLowerCase()]: became };
      const edited = await context.useCases.editCard(actor, { place, reference, edit: change });
      return caller.tell(cardEditedMessage(edited));
    }
    const make = async () =>
      editCardFormView(await context.useCases.cardToEdit(actor, { place, reference }), replyTo);
    const value = encodeValue({ channelId: place.channelId, reference: reference.slice(0, 64) });
    return showForm(context, caller, make, () => ({ actionId: ACTIONS.editCard, value }));
  },
  forms: [
    {
      name: EDIT_SPRINT,
      fields: EDIT_SPRINT_FIELDS,
      make: async ({ useCases }, { actor, replyTo }, place) =>
        editSprintFormView(await useCases.sprintToEdit(actor, place), replyTo),
      submit: async (useCases, { actor, fields, context }) => {
        const { sprintId } = readHeld(sprintContext, context);
        const change = {
          goal: fields.text(EDIT_SPRINT_FIELDS.goal),
          endsOn: fields.text(EDIT_SPRINT_FIELDS.endsOn),
          closesAt: fields.text(EDIT_SPRINT_FIELDS.closesAt),
          awayDays: fields.text(EDIT_SPRINT_FIELDS.awayDays),
        };
        const edited = await useCases.editSprint(actor, { sprintId, edit: change });
        return { next: 'close', say: sprintEditedMessage(edited) };
      },
    },
    {
      name: EDIT_CARD,
      fields: EDIT_CARD_FIELDS,
      submit: async (useCases, { actor, fields, context }) => {
        const { sprintId, number } = readHeld(cardContext, context);
        const { title, link, key, estimate } = EDIT_CARD_FIELDS;
        const change = {
          title: fields.text(title),
          link: fields.text(link),
          key: fields.text(key),
          // The form shows it only while it may be corrected.
          ...(fields.blockIds.includes(estimate) ? { estimate: fields.text(estimate) } : {}),
        };
        const reference = String(number);
        return {
          next: 'close',
          say: cardEditedMessage(await useCases.editCard(actor, { sprintId, reference, edit: change })),
        };
      },
    },
  ],
  buttons: {
    [ACTIONS.editCard]: {
      press: async ({ useCases, client }, { actor, replyTo, triggerId }, held) => {
        const { channelId, reference } = readHeld(cardValue, held);
        const place = { channelId, isDirect: false };
        const form = await useCases.cardToEdit(actor, { place, reference });
        await openForm(client, triggerId, editCardFormView(form, replyTo));
      },
    },
  },
  inOverview: {
    row: 'sprint',
    when: ({ isFacilitator, sprint }) => isFacilitator && sprint !== undefined,
  },
});
