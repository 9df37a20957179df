/** The cards of the sprint: listing, pulling in, taking, giving and dropping them. */
import { Refusal } from '../../app/refusal.ts';
import type { TeamOverview } from '../../app/watching/overview.ts';
import { cardDayValue, sprintCardValue } from '../button-values.ts';
import { cardDraftContext, sprintContext } from '../form-contexts.ts';
import { ACTIONS, SHORTCUTS } from '../ids.ts';
import {
  DROP_FIELDS,
  dropFormView,
  PULL_FIELDS,
  PULL_TEAM,
  PULL_TEAM_FIELDS,
  pullFormView,
} from '../views/cards/card-forms.ts';
import {
  blockedMessage,
  cardsMessage,
  droppedMessage,
  movingMessage,
  ownersMessage,
  pulledMessage,
  undroppedMessage,
} from '../views/cards/card-messages.ts';
import { type Command, command, placeIn, readHeld, showFirstForm } from './command.ts';
import { chooseMessage } from './pull-message.ts';

export const cards = command({
  word: 'cards',
  who: 'team-and-owner',
  run: async ({ useCases }, caller, rest) => {
    const from = firstNumberIn(rest);
    await caller.tell(cardsMessage(await useCases.listCards(caller.actor, caller.place), from));
  },
  buttons: {
    [ACTIONS.showCards]: {
      press: async ({ useCases }, presser, value) => {
        await presser.tell(cardsMessage(await useCases.listCards(presser.actor, placeIn(value))));
      },
    },
  },
  inOverview: { row: 'daily', when: seesSprint, actionId: ACTIONS.showCards },
});

export const pull: Command = command({
  word: 'pull',
  who: 'member',
  takesLinks: true,
  takesPeople: true,
  run: async (context, caller, rest) => {
    if (rest === '') return showFirstForm(pull, context, caller);
    const { actor, place } = caller;
    await caller.tell(pulledMessage(await context.useCases.pullCards(actor, { place, text: rest })));
  },
  forms: [
    {
      name: 'pull',
      fields: PULL_FIELDS,
      make: async ({ useCases }, { actor, replyTo }, place) =>
        pullFormView(await useCases.pullForm(actor, place), replyTo),
      submit: async (useCases, { actor, fields, context }) => {
        const { sprintId } = readHeld(sprintContext, context);
        const text = fields.text(PULL_FIELDS.cards);
        const pulled = await useCases.pullCards(actor, { sprintId, text });
        return { next: 'close', say: pulledMessage(pulled) };
      },
    },
    {
      name: PULL_TEAM,
      fields: PULL_TEAM_FIELDS,
      submit: async (useCases, { actor, fields, context }) => {
        const { replyTo, title, link } = readHeld(cardDraftContext, context);
        const place = { channelId: fields.text(PULL_TEAM_FIELDS.channelId), isDirect: false };
        const form = await useCases.pullForm(actor, place);
        return { next: 'show', how: 'in place', view: pullFormView(form, replyTo, { title, link }) };
      },
    },
  ],
  shortcuts: { [SHORTCUTS.pullMessageIn]: { choose: chooseMessage } },
  inOverview: { row: 'daily', when: (team) => hasSprint(team) && team.begun },
});

export const take = command({
  word: 'take',
  who: 'member',
  run: async ({ useCases }, { actor, place, tell }, rest) => {
    await tell(ownersMessage(await useCases.takeCards(actor, { place, words: rest }), 'take'));
  },
});

const WHICH_CARD = { code: 'which-card' } as const;

export const blocked = command({
  word: 'blocked',
  who: 'member',
  run: async ({ useCases }, caller, rest) => {
    if (rest === '') {
      throw new Refusal('bad-argument', { command: 'blocked', problem: WHICH_CARD, example: undefined });
    }
    const { reference, reason: on } = referenceAndReason('blocked', rest);
    const { actor, place } = caller;
    await caller.tell(blockedMessage(await useCases.blockCard(actor, { place, reference, on }), on));
  },
});

export const moving = command({
  word: 'moving',
  who: 'member',
  run: async ({ useCases }, caller, rest) => {
    if (rest === '') {
      throw new Refusal('bad-argument', { command: 'moving', problem: WHICH_CARD, example: '3' });
    }
    const { actor, place } = caller;
    await caller.tell(movingMessage(await useCases.unblockCard(actor, { place, reference: rest })));
  },
  buttons: {
    [ACTIONS.cardMoving]: {
      press: async ({ useCases }, presser, value) => {
        const { sprintId, day, card: reference } = readHeld(cardDayValue, value);
        const change = await useCases.unblockCard(presser.actor, { sprintId, reference });
        // The prompt of its own day is brought up to date, which says as much.
        if (change.day !== day) await presser.tell(movingMessage(change));
      },
    },
  },
});

export const drop: Command = command({
  word: 'drop',
  who: 'team-and-owner',
  run: async (context, caller, rest) => {
    if (rest === '') return showFirstForm(drop, context, caller);
    const { reference, reason } = referenceAndReason('drop', rest);
    const { actor, place } = caller;
    const dropped = await context.useCases.dropCard(actor, { place, reference, reason });
    await caller.tell(droppedMessage(dropped, reason));
  },
  forms: [
    {
      name: 'drop',
      fields: DROP_FIELDS,
      make: async ({ useCases }, { actor, replyTo }, place) =>
        dropFormView(await useCases.listCards(actor, place), replyTo),
      submit: async (useCases, { actor, fields, context }) => {
        const { sprintId } = readHeld(sprintContext, context);
        const reason = fields.text(DROP_FIELDS.reason);
        const reference = fields.text(DROP_FIELDS.reference);
        const dropped = await useCases.dropCard(actor, { sprintId, reference, reason });
        return { next: 'close', say: droppedMessage(dropped, reason) };
      },
    },
  ],
  inOverview: { row: 'daily', when: seesSprint },
});

export const undrop = command({
  word: 'undrop',
  who: 'team-and-owner',
  run: async ({ useCases }, { actor, place, tell }, rest) => {
    await tell(undroppedMessage(await useCases.undropCard(actor, { place, reference: rest })));
  },
  buttons: {
    [ACTIONS.takeDropBack]: {
      press: async ({ useCases }, { actor, tell }, value) => {
        const { sprintId, card } = readHeld(sprintCardValue, value);
        await tell(undroppedMessage(await useCases.undropCard(actor, { sprintId, reference: card })));
      },
    },
  },
});

export const give = command({
  word: 'give',
  who: 'member',
  takesPeople: true,
  run: async ({ useCases }, { actor, place, tell }, rest) => {
    await tell(ownersMessage(await useCases.giveCards(actor, { place, words: rest }), 'give'));
  },
});

export const release = command({
  word: 'release',
  who: 'member',
  run: async ({ useCases }, { actor, place, tell }, rest) => {
    await tell(ownersMessage(await useCases.releaseCards(actor, { place, words: rest }), 'release'));
  },
});

export const assign = command({
  word: 'assign',
  who: 'facilitator',
  takesPeople: true,
  run: async ({ useCases }, { actor, place, tell }, rest) => {
    await tell(ownersMessage(await useCases.assignCards(actor, { place, words: rest }), 'give'));
  },
});

function hasSprint({ isMember, sprint }: TeamOverview): boolean {
  return isMember && sprint !== undefined;
}

/** The product owner sees the sprint, and may drop cards. */
function seesSprint({ isMember, isProductOwner, sprint }: TeamOverview): boolean {
  return (isMember || isProductOwner) && sprint !== undefined;
}

function firstNumberIn(rest: string): number | undefined {
  if (rest === '') return undefined;
  if (/^\d{1,4}$/.test(rest)) return Number(rest);
  throw new Refusal('bad-argument', {
    command: 'cards',
    problem: { code: 'first-card' },
    example: '40',
  });
}

/** Other cards, where a reason is wanted. */
const MORE_CARDS = /^(?:and |& ?)?#?\d[\d\s,;#]*(?:(?:and|&) #?\d+)?$/i;

/**
 * `3, no longer wanted`, `3 no longer wanted` or `card 3: no longer wanted`.
 *
 * @throws Refusal `bad-argument` where what follows is another card: `3, 4`
 */
function referenceAndReason(
  command: 'blocked' | 'drop',
  rest: string,
): { reference: string; reason: string } {
  const [, reference = rest, reason = ''] = /^(?:card )?([^\s,;:]+)[\s,;:]*([\s\S]*)$/i.exec(rest) ?? [];
  if (MORE_CARDS.test(reason.trim())) {
    throw new Refusal('bad-argument', { command, problem: { code: 'one-card' }, example: undefined });
  }
  return { reference, reason };
}
