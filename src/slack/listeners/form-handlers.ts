/** What each form leads to: read the fields, call the use case, say what comes next. Ids bound to handlers only. */
import { z } from 'zod';
import { parseAwayDays } from '../../app/planning/away-days.ts';
import { DEFAULT_THRESHOLDS, type Thresholds } from '../../sprint/thresholds.ts';
import { decodeValue } from '../button-values.ts';
import { answerContext, personContext, setupContext, sprintContext, teamContext } from '../form-contexts.ts';
import { FIELDS, FIRST_SPRINT, FORMS } from '../ids.ts';
import { answerFormView } from '../views/answering/answer-form.ts';
import { dailyPromptMessage } from '../views/answering/prompt-messages.ts';
import { baselineNamedMessage } from '../views/baseline-named-message.ts';
import { droppedMessage, pulledMessage } from '../views/cards/card-messages.ts';
import { planPreviewView } from '../views/planning/plan-forms.ts';
import { planCommittedReply } from '../views/planning/plan-messages.ts';
import { erasedMessage } from '../views/privacy-message.ts';
import { sprintCancelledReply, sprintClosedReply } from '../views/sprint-change-messages.ts';
import { measuresSavedReply, teamSavedReply } from '../views/team/team-messages.ts';
import { valueRecordedMessage } from '../views/value-recorded-message.ts';
import type { FormHandler } from './form-outcome.ts';
import { submitImport } from './import-submission.ts';
import { readForecastFields } from './parse-forecast-question.ts';
import { StaleControl } from './stale-control.ts';
import { answerTo } from './tell-advice.ts';

export const FORM_HANDLERS: Readonly<Record<string, FormHandler>> = {
  [FORMS.setup]: async (useCases, { actor, fields, context }) => {
    const { channelId } = read(setupContext, context);
    const field = FIELDS.setup;
    const { canSetUpHere } = await useCases.overview(actor, { channelId, isDirect: false });
    const team = await useCases.setUpTeam(actor, {
      channelId,
      name: fields.text(field.name),
      timeZone: fields.text(field.timeZone),
      promptAt: fields.text(field.promptAt),
      workingDays: fields.choices(field.workingDays).map(Number),
      memberIds: fields.choices(field.memberIds),
      facilitatorIds: fields.choices(field.facilitatorIds),
      productOwnerId: fields.choices(field.productOwnerId)[0],
    });
    return { next: 'close', say: teamSavedReply(team, !canSetUpHere) };
  },

  [FORMS.measures]: async (useCases, { actor, fields, context }) => {
    const { teamId } = read(teamContext, context);
    const field = FIELDS.measures;
    const names = Object.keys(DEFAULT_THRESHOLDS) as (keyof Thresholds)[];
    const thresholds = Object.fromEntries(names.map((name) => [name, fields.text(name)]));
    const team = await useCases.setMeasures(actor, {
      teamId,
      closesAt: fields.text(field.closesAt),
      reminderAfterMinutes: fields.text(field.reminderAfterMinutes),
      scale: fields.text(field.scale),
      retentionMonths: fields.text(field.retentionMonths),
      thresholds: thresholds as Record<keyof Thresholds, string>,
    });
    return { next: 'close', say: measuresSavedReply(team) };
  },

  [FORMS.plan]: async (useCases, { actor, fields, context }) => {
    const { teamId, replyTo } = read(teamContext, context);
    const field = FIELDS.plan;
    const preview = await useCases.previewPlan(actor, {
      teamId,
      name: fields.text(field.name),
      goal: fields.text(field.goal),
      startsOn: fields.text(field.startsOn),
      endsOn: fields.text(field.endsOn),
      closesAt: fields.text(field.closesAt),
      awayDays: fields.text(field.awayDays),
      cards: fields.cardLines(),
    });
    return { next: 'show', how: 'on top', view: planPreviewView(preview, replyTo) };
  },

  [FORMS.planPreview]: async (useCases, { actor, context }) => {
    const { teamId } = read(teamContext, context);
    return { next: 'close-all', say: planCommittedReply(await useCases.commitPlan(actor, { teamId })) };
  },

  [FORMS.answer]: async (useCases, { actor, fields, context }) => {
    const { sprintId, day, replyTo } = read(answerContext, context);
    const takeCardIds = fields.takenCardIds();
    const outcome = await useCases.recordAnswers(actor, {
      sprintId,
      day,
      answers: fields.answers(),
      takeCardIds,
    });
    if (outcome.kind === 'recorded') return { next: 'close', say: dailyPromptMessage(outcome.prompt) };
    const form = await useCases.answerForm(actor, { sprintId, day });
    return { next: 'show', how: 'in place', view: answerFormView(form, outcome, replyTo) };
  },

  [FORMS.pull]: async (useCases, { actor, fields, context }) => {
    const { sprintId } = read(sprintContext, context);
    const field = FIELDS.pull;
    const pulled = await useCases.pullCard(actor, {
      sprintId,
      title: fields.text(field.title),
      estimate: fields.text(field.estimate),
      ownerIds: fields.choices(field.ownerIds),
    });
    return { next: 'close', say: pulledMessage(pulled) };
  },

  [FORMS.drop]: async (useCases, { actor, fields, context }) => {
    const { sprintId } = read(sprintContext, context);
    const reason = fields.text(FIELDS.drop.reason);
    const dropped = await useCases.dropCard(actor, {
      sprintId,
      reference: fields.text(FIELDS.drop.reference),
      reason,
    });
    return { next: 'close', say: droppedMessage(dropped, reason) };
  },

  [FORMS.close]: async (useCases, { actor, context }) => {
    const { sprintId } = read(sprintContext, context);
    return { next: 'close', say: sprintClosedReply(await useCases.closeSprint(actor, { sprintId })) };
  },

  [FORMS.cancel]: async (useCases, { actor, fields, context }) => {
    const { sprintId } = read(sprintContext, context);
    const reason = fields.text(FIELDS.cancel.reason);
    return {
      next: 'close',
      say: sprintCancelledReply(await useCases.cancelSprint(actor, { sprintId, reason })),
    };
  },

  [FORMS.value]: async (useCases, { actor, fields, context }) => {
    const { teamId } = read(teamContext, context);
    const field = FIELDS.value;
    const recorded = await useCases.recordValue(actor, {
      teamId,
      sprint: { sprintId: fields.text(field.sprintId) },
      value: fields.text(field.recordedValue),
    });
    return { next: 'close', say: valueRecordedMessage(recorded) };
  },

  [FORMS.range]: async (useCases, { actor, fields, context }, tools) => {
    const { teamId } = read(teamContext, context);
    const field = FIELDS.range;
    const away = fields.text(field.awayDays).trim();
    const question = {
      about: 'range',
      startsOn: fields.text(field.startsOn),
      endsOn: fields.text(field.endsOn),
      // What is no number is refused at its field by the use case.
      awayDays: away === '' ? undefined : (parseAwayDays(away) ?? Number.NaN),
    } as const;
    return { next: 'close', say: await answerTo({ useCases, ...tools }, actor, { teamId }, question) };
  },

  [FORMS.forecast]: async (useCases, { actor, fields, context }, tools) => {
    const { teamId } = read(teamContext, context);
    const field = FIELDS.forecast;
    const question = readForecastFields(fields.text(field.backlogPoints), fields.text(field.growthPoints));
    return { next: 'close', say: await answerTo({ useCases, ...tools }, actor, { teamId }, question) };
  },

  [FORMS.import]: submitImport,

  [FORMS.erase]: async (useCases, { actor, context }) => {
    read(personContext, context);
    return { next: 'close', say: erasedMessage(await useCases.erasePerson(actor)) };
  },

  [FORMS.baseline]: async (useCases, { actor, fields, context }) => {
    const { teamId } = read(teamContext, context);
    const chosen = fields.text(FIELDS.baseline.sprintId);
    const named = await useCases.nameBaseline(actor, {
      teamId,
      sprint: chosen === FIRST_SPRINT ? FIRST_SPRINT : { sprintId: chosen },
    });
    return { next: 'close', say: baselineNamedMessage(named) };
  },
};

/** Where replies to the form belong; any form may say so, and a context that can't be read says nothing. */
export function replyToOf(context: string): string | undefined {
  return decodeValue(z.looseObject({ replyTo: z.string().max(64).optional() }), context)?.replyTo;
}

function read<T>(schema: z.ZodType<T>, context: string): T {
  const value = decodeValue(schema, context);
  if (value === undefined) throw new StaleControl('form context');
  return value;
}
