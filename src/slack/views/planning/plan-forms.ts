/** The form in which a sprint is planned. Nothing is committed to before its preview is confirmed. */
import type { InputBlock, ModalView, SectionBlock } from '@slack/types';
import type { Experiment } from '../../../app/experiments/experiment.ts';
import type { PlanForm } from '../../../app/planning/plan-form.ts';
import { guestIdsIn } from '../../../app/planning/read-plan.ts';
import { experimentWords } from '../../../words/experiments.ts';
import { mrkdwn, say } from '../../../words/say.ts';
import { cardFileField, cardsField, MAX_CARD_FIELDS } from '../../ids.ts';
import { awayDaysField } from '../advice-forms.ts';
import { section } from '../block-builders.ts';
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
    ...(leftOver > 0 ? [mrkdwn('plan-left-over', { cards: leftOver, with: team.carriedOver })] : []),
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

export function tryingSections(experiments: readonly Experiment[]): SectionBlock[] {
  if (experiments.length === 0) return [];
  return [section(mrkdwn('plan-trying', { experiments: experiments.map(experimentWords) }))];
}
