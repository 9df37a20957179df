/** The form in which a sprint is planned, and its preview. Nothing is committed to before the preview is confirmed. */
import type { InputBlock, ModalView, SectionBlock } from '@slack/types';
import type { Experiment } from '../../../app/experiments/experiment.ts';
import type { PlanForm } from '../../../app/planning/plan-form.ts';
import type { PlanPreview } from '../../../app/planning/plan-sprint.ts';
import { guestIdsIn } from '../../../app/planning/read-plan.ts';
import { plannedCardLine } from '../../../words/cards.ts';
import { planTimeLines } from '../../../words/days-off.ts';
import { experimentWords } from '../../../words/experiments.ts';
import { people } from '../../../words/people.ts';
import { planOddsWords, planRangeWords } from '../../../words/plan-advice.ts';
import { planWarning, recentSprint } from '../../../words/planning.ts';
import { mrkdwn, say } from '../../../words/say.ts';
import { sprintSpan } from '../../../words/sprint.ts';
import { cardFileField, cardsField, MAX_CARD_FIELDS } from '../../ids.ts';
import { awayDaysField } from '../advice-forms.ts';
import { bold, context, lead, section } from '../block-builders.ts';
import {
  CSV_FILE_TYPES,
  dateField,
  fileField,
  peopleField,
  TEXT_INPUT_MAX_LENGTH,
  textField,
  timeField,
} from '../form-inputs.ts';
import { formView } from '../form-view.ts';
import { lineList, lineSections } from '../line-sections.ts';

export const PLAN_FIELDS = {
  name: 'name',
  goal: 'goal',
  startsOn: 'startsOn',
  endsOn: 'endsOn',
  closesAt: 'closesAt',
  awayDays: 'awayDays',
  guests: 'guests',
  cards: cardsField(1),
  cardFile: cardFileField(1),
} as const;

const NAME_MAX_LENGTH = 80;
const GOAL_MAX_LENGTH = 500;
const CARD_SECTIONS_MAX = 60;
/** How many fields for cards there are before anything has been typed. */
const CARD_FIELDS_AT_FIRST = 3;

export function planFormView(
  { team, draft, leftOver, fromFile, experiments = [] }: PlanForm,
  replyTo?: string,
): ModalView {
  const fields = PLAN_FIELDS;
  const frame = {
    form: 'plan',
    title: say('plan-title'),
    submit: say('plan-submit'),
    context: { teamId: team.id },
    replyTo,
  };
  const intro = [
    mrkdwn('plan-intro', { team: team.name }),
    ...(leftOver > 0 ? [mrkdwn('plan-left-over', { cards: leftOver })] : []),
    ...(fromFile === undefined ? [] : [mrkdwn('plan-from-file', { rows: fromFile })]),
  ];
  return formView(frame, [
    section(intro.join(' ')),
    ...tryingSections(experiments),
    textField({
      field: fields.name,
      label: say('plan-name'),
      initial: draft.name,
      maxLength: NAME_MAX_LENGTH,
    }),
    textField({
      field: fields.goal,
      label: say('plan-goal'),
      hint: say('plan-goal-hint'),
      optional: true,
      initial: draft.goal,
      maxLength: GOAL_MAX_LENGTH,
    }),
    dateField({ field: fields.startsOn, label: say('plan-first-day'), initial: draft.startsOn }),
    dateField({ field: fields.endsOn, label: say('plan-last-day'), initial: draft.endsOn }),
    timeField({
      field: fields.closesAt,
      label: say('plan-closing-time'),
      hint: say('plan-closing-time-hint', { timeZone: team.timeZone }),
      initial: draft.closesAt,
    }),
    awayDaysField(fields.awayDays, draft.awayDays),
    peopleField({
      field: fields.guests,
      label: say('plan-guests'),
      hint: say('plan-guests-hint'),
      optional: true,
      initial: guestIdsIn(draft),
    }),
    ...cardFields(draft.cards),
    fileField({
      field: fields.cardFile,
      label: say('plan-card-file'),
      hint: say('plan-card-file-hint'),
      optional: true,
      fileTypes: CSV_FILE_TYPES,
      maxFiles: 1,
    }),
  ]);
}

/**
 * The platform's text field holds 3,000 characters, which 100 cards outgrow, so there are several fields; their texts
 * are put together line by line.
 */
function cardFields(cards: string): InputBlock[] {
  const texts = textsFor(cards);
  const fields = Math.min(MAX_CARD_FIELDS, Math.max(CARD_FIELDS_AT_FIRST, texts.length + 1));
  return Array.from({ length: fields }, (_, i) => {
    const place = i + 1;
    const words =
      place === 1
        ? { label: say('plan-cards'), hint: say('plan-cards-hint') }
        : { label: say('plan-more-cards', { place, fields }), hint: say('plan-more-cards-hint') };
    return textField({
      field: cardsField(place),
      ...words,
      optional: true,
      multiline: true,
      initial: texts[i],
    });
  });
}

/** Splits the text at line ends into pieces that a field holds; a longer line, which no card needs, is cut. */
function textsFor(cards: string): string[] {
  const texts: string[] = [];
  for (const line of cards.split('\n')) {
    const last = texts.at(-1);
    const joined = last === undefined ? line : `${last}\n${line}`;
    if (last !== undefined && joined.length <= TEXT_INPUT_MAX_LENGTH) texts[texts.length - 1] = joined;
    else texts.push(line);
  }
  return texts;
}

export function planPreviewView(preview: PlanPreview, replyTo?: string): ModalView {
  const { team, input, cards, commitmentPoints, warnings } = preview;
  const frame = {
    form: 'plan-preview',
    title: say('plan-preview-title'),
    submit: say('plan-preview-submit'),
    leave: say('plan-preview-back'),
    context: { teamId: team.id },
    replyTo,
  };
  const about = { sprint: input.name, points: commitmentPoints, cards: cards.length };
  const days = {
    span: sprintSpan(input),
    days: preview.workingDays,
    time: input.closesAt,
    timeZone: team.timeZone,
  };
  return formView(frame, [
    lead(say('plan-preview-lead', about)),
    section(mrkdwn('plan-preview-days', days)),
    ...timeSections(preview),
    ...(preview.guestIds.length > 0
      ? [section(mrkdwn('plan-guests-line', { guests: people(preview.guestIds) }))]
      : []),
    ...(input.goal.trim() === '' ? [] : [section(mrkdwn('plan-goal-line', { goal: input.goal }))]),
    ...tryingSections(preview.experiments),
    ...lineSections(
      lineList(bold(mrkdwn('plan-check-title')), warnings.map(planWarning), (count) =>
        mrkdwn('plan-check-more', { warnings: count }),
      ),
      { maxSections: 5 },
    ),
    ...adviceSections(preview),
    section(recentSprints(preview)),
    ...lineSections(
      lineList(bold(mrkdwn('plan-cards-title')), cards.map(plannedCardLine), (count) =>
        mrkdwn('plan-cards-more', { cards: count }),
      ),
      { maxSections: CARD_SECTIONS_MAX },
    ),
    context(mrkdwn('plan-preview-after')),
  ]);
}

function tryingSections(experiments: readonly Experiment[]): SectionBlock[] {
  if (experiments.length === 0) return [];
  return [section(mrkdwn('plan-trying', { experiments: experiments.map(experimentWords) }))];
}

/** A form is seen by the person who opened it: who is off when is not for the channel. */
function timeSections({ time }: PlanPreview): SectionBlock[] {
  const { lead: first, lines } = planTimeLines(time);
  if (lines.length === 0) return [section(first)];
  return lineSections(
    lineList(first, lines, (count) => mrkdwn('plan-time-more', { count })),
    { maxSections: 3 },
  );
}

/** The range, where this commitment lies, and the odds of the big cards. */
function adviceSections({ range, commitment, commitmentPoints, bigCards }: PlanPreview): SectionBlock[] {
  const odds = commitmentPoints > 0 ? planOddsWords(bigCards) : [];
  return [
    section(`${bold(mrkdwn('plan-range-title'))}\n${planRangeWords(range, commitment, commitmentPoints)}`),
    ...(odds.length > 0 ? [section([bold(mrkdwn('plan-odds-title')), ...odds].join('\n'))] : []),
  ];
}

function recentSprints({ recent }: PlanPreview): string {
  if (recent.length === 0) return mrkdwn('plan-recent-none');
  return [bold(mrkdwn('plan-recent-title')), ...recent.map(recentSprint)].join('\n');
}
