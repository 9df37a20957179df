/** The sprint as a whole: planning, closing, cancelling and reopening it. */
import type { GoalMet } from '../../app/team/team.ts';
import type { TeamOverview } from '../../app/watching/overview.ts';
import { sprintValue } from '../button-values.ts';
import { planPreviewContext, sprintContext, teamContext } from '../form-contexts.ts';
import { ACTIONS } from '../ids.ts';
import { openForm } from '../listeners/asker.ts';
import { fileOfCards, showCardFile, submitCardFile } from '../listeners/card-file-submission.ts';
import { reopenedCardMessage } from '../views/cards/card-messages.ts';
import { GOAL_FIELDS, goalFormView, goalRecordedReply } from '../views/goal-views.ts';
import { PLAN_FIELDS, planFormView } from '../views/planning/plan-forms.ts';
import { planCommittedReply } from '../views/planning/plan-messages.ts';
import { planPreviewView } from '../views/planning/plan-preview.ts';
import {
  CANCEL_FIELDS,
  cancelFormView,
  closeFormView,
  sprintCancelledReply,
  sprintClosedReply,
  sprintReopenedReply,
} from '../views/sprint-change-views.ts';
import { type Button, type Command, command, picked, placeIn, readHeld, showFirstForm } from './command.ts';

export const plan = command({
  word: 'plan',
  who: 'facilitator',
  forms: [
    {
      name: 'plan',
      fields: PLAN_FIELDS,
      recordsNothing: true,
      make: async ({ useCases }, { actor, replyTo }, place) =>
        planFormView(await useCases.planForm(actor, place), replyTo),
      submit: async (useCases, sent, tools) => {
        const { actor, fields, context } = sent;
        const { teamId, replyTo } = readHeld(teamContext, context);
        const plan = {
          teamId,
          name: fields.text(PLAN_FIELDS.name),
          goal: fields.text(PLAN_FIELDS.goal),
          startsOn: fields.text(PLAN_FIELDS.startsOn),
          endsOn: fields.text(PLAN_FIELDS.endsOn),
          closesAt: fields.text(PLAN_FIELDS.closesAt),
          awayDays: fields.text(PLAN_FIELDS.awayDays),
          guests: fields.choices(PLAN_FIELDS.guests).join(' '),
          cards: fields.cardLines(),
        };
        const [file] = fields.files(PLAN_FIELDS.cardFile);
        if (file) return showCardFile(useCases, sent, tools, { plan, file, replyTo });
        const preview = await useCases.previewPlan(actor, plan);
        return { next: 'show', how: 'on top', view: planPreviewView(preview, replyTo) };
      },
      files: picked(PLAN_FIELDS.cardFile),
    },
    {
      name: 'card-file',
      cost: 'heavy',
      recordsNothing: true,
      submit: submitCardFile,
      files: fileOfCards,
    },
    {
      name: 'plan-preview',
      submit: async (useCases, { actor, context, fields }) => {
        const { teamId, seen } = readHeld(planPreviewContext, context);
        const plan = await useCases.commitPlan(actor, { teamId, seen, ticked: fields.tickedCards() });
        return { next: 'close-all', say: planCommittedReply(plan) };
      },
      change: async (useCases, { actor, context, fields }) => {
        const { teamId, seen, replyTo } = readHeld(planPreviewContext, context);
        const ticked = fields.tickedCards();
        return planPreviewView(await useCases.previewTicked(actor, { teamId, seen, ticked }), replyTo);
      },
    },
  ],
  inOverview: {
    row: 'planning',
    when: isFacilitator,
    label: ({ sprint }) => (sprint ? 'overview-plan-another-button' : 'overview-plan-button'),
    primary: ({ sprint }) => !sprint,
  },
});

/** Whether the sprint's goal was met. */
export const goal: Command = command({
  word: 'goal',
  who: 'product-owner',
  run: async (context, caller, rest) => {
    if (rest === '') return showFirstForm(goal, context, caller);
    const { actor, place } = caller;
    await caller.tell(goalRecordedReply(await context.useCases.recordGoal(actor, { place, line: rest })));
  },
  forms: [
    {
      name: 'goal',
      fields: GOAL_FIELDS,
      make: async ({ useCases }, { actor, replyTo }, place) =>
        goalFormView(await useCases.goalForm(actor, { place }), replyTo),
      submit: async (useCases, { actor, fields, context }) => {
        const { sprintId } = readHeld(sprintContext, context);
        const answer = { sprintId, met: fields.text(GOAL_FIELDS.met), note: fields.text(GOAL_FIELDS.note) };
        return { next: 'close', say: goalRecordedReply(await useCases.recordGoal(actor, answer)) };
      },
    },
  ],
  buttons: {
    [ACTIONS.goalYes]: goalAnswer('yes'),
    [ACTIONS.goalPartly]: goalAnswer('partly'),
    [ACTIONS.goalNo]: goalAnswer('no'),
    [ACTIONS.explainGoal]: {
      press: async ({ useCases, client }, { actor, replyTo, triggerId }, value) => {
        const form = await useCases.goalForm(actor, readHeld(sprintValue, value));
        await openForm(client, triggerId, goalFormView(form, replyTo));
      },
    },
  },
});

/** The question itself is brought up to date, and says what was recorded. */
function goalAnswer(met: GoalMet): Button {
  return {
    press: async ({ useCases }, { actor }, value) => {
      await useCases.recordGoal(actor, { ...readHeld(sprintValue, value), met, note: '' });
    },
  };
}

export const close = command({
  word: 'close',
  who: 'facilitator',
  forms: [
    {
      name: 'close',
      make: async ({ useCases }, { actor, replyTo }, place) =>
        closeFormView(await useCases.sprintToEnd(actor, { place, how: 'close' }), replyTo),
      submit: async (useCases, { actor, context }) => {
        const { sprintId } = readHeld(sprintContext, context);
        return { next: 'close', say: sprintClosedReply(await useCases.closeSprint(actor, { sprintId })) };
      },
    },
  ],
  inOverview: {
    row: 'sprint',
    when: (team) => isFacilitator(team) && team.sprint !== undefined && team.begun,
  },
});

export const cancel = command({
  word: 'cancel',
  who: 'facilitator',
  forms: [
    {
      name: 'cancel',
      fields: CANCEL_FIELDS,
      make: async ({ useCases }, { actor, replyTo }, place) =>
        cancelFormView(await useCases.sprintToEnd(actor, { place, how: 'cancel' }), replyTo),
      submit: async (useCases, { actor, fields, context }) => {
        const { sprintId } = readHeld(sprintContext, context);
        const reason = fields.text(CANCEL_FIELDS.reason);
        const cancelled = await useCases.cancelSprint(actor, { sprintId, reason });
        return { next: 'close', say: sprintCancelledReply(cancelled) };
      },
    },
  ],
  inOverview: { row: 'sprint', when: (team) => isFacilitator(team) && team.sprint !== undefined },
});

/** Of a card, or without one of the closed sprint. */
export const reopen = command({
  word: 'reopen',
  who: 'member',
  run: async ({ useCases }, caller, rest) => {
    const { actor, place } = caller;
    if (rest === '') return caller.tell(sprintReopenedReply(await useCases.reopenSprint(actor, { place })));
    await caller.tell(reopenedCardMessage(await useCases.reopenCard(actor, { place, reference: rest })));
  },
  buttons: {
    [ACTIONS.reopenLastSprint]: {
      press: async ({ useCases }, presser, value) => {
        const reopened = await useCases.reopenSprint(presser.actor, { place: placeIn(value) });
        await presser.tell(sprintReopenedReply(reopened));
      },
    },
    [ACTIONS.reopenSprint]: {
      press: async ({ useCases }, presser, value) => {
        const reopened = await useCases.reopenSprint(presser.actor, readHeld(sprintValue, value));
        await presser.tell(sprintReopenedReply(reopened));
      },
    },
  },
  inOverview: {
    row: 'sprint',
    when: (team) => isFacilitator(team) && team.reopenable !== undefined && !team.sprint,
    actionId: ACTIONS.reopenLastSprint,
  },
});

function isFacilitator(team: TeamOverview): boolean {
  return team.isFacilitator;
}
