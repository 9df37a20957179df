/** The forms that correct a running sprint's plan, and what confirms it. */
import type { ModalView } from '@slack/types';
import { MAX_LINK_LENGTH } from '../../../app/cards/card-link.ts';
import type { CardToEdit, EditedCard } from '../../../app/planning/edit-card.ts';
import type { EditedSprint, SprintToEdit } from '../../../app/planning/edit-sprint.ts';
import { number } from '../../../words/amounts.ts';
import { numbered } from '../../../words/cards.ts';
import { mrkdwn, say } from '../../../words/say.ts';
import { awayDaysField } from '../advice-forms.ts';
import { section } from '../block-builders.ts';
import { dateField, textField, timeField } from '../form-inputs.ts';
import { formView } from '../form-view.ts';
import { type MessageView, messageView } from '../message-view.ts';

export const EDIT_CARD = 'edit-card';
export const EDIT_CARD_FIELDS = { title: 'title', link: 'link', key: 'key', estimate: 'estimate' } as const;
export const EDIT_SPRINT = 'edit-sprint';
export const EDIT_SPRINT_FIELDS = {
  goal: 'goal',
  endsOn: 'endsOn',
  closesAt: 'closesAt',
  awayDays: 'awayDays',
} as const;

const TITLE_MAX_LENGTH = 200;
const KEY_MAX_LENGTH = 18;
const GOAL_MAX_LENGTH = 500;

export function editCardFormView(
  { heading, card, key, mayChangeEstimate }: CardToEdit,
  replyTo?: string,
): ModalView {
  const fields = EDIT_CARD_FIELDS;
  const frame = {
    form: EDIT_CARD,
    title: say('edit-card-title'),
    submit: say('edit-submit'),
    context: { sprintId: heading.sprint.id, number: card.number },
    replyTo,
  };
  const estimate = mayChangeEstimate
    ? textField({
        field: fields.estimate,
        label: say('edit-card-estimate'),
        hint: say('edit-card-estimate-hint'),
        initial: number(card.estimatePoints),
        maxLength: 10,
      })
    : section(mrkdwn('edit-card-estimate-fixed'));
  return formView(frame, [
    section(mrkdwn('edit-card-intro', { sprint: heading.sprint.name, ...numbered(card) })),
    textField({
      field: fields.title,
      label: say('edit-card-name'),
      initial: card.title,
      maxLength: TITLE_MAX_LENGTH,
    }),
    textField({
      field: fields.link,
      label: say('edit-card-link'),
      hint: say('edit-card-link-hint'),
      optional: true,
      initial: card.link,
      maxLength: MAX_LINK_LENGTH,
    }),
    textField({
      field: fields.key,
      label: say('edit-card-key'),
      hint: say('edit-card-key-hint'),
      optional: true,
      initial: key,
      maxLength: KEY_MAX_LENGTH,
    }),
    estimate,
  ]);
}

export function editSprintFormView({ team, sprint }: SprintToEdit, replyTo?: string): ModalView {
  const fields = EDIT_SPRINT_FIELDS;
  const frame = {
    form: EDIT_SPRINT,
    title: say('edit-sprint-title'),
    submit: say('edit-submit'),
    context: { sprintId: sprint.id },
    replyTo,
  };
  return formView(frame, [
    section(mrkdwn('edit-sprint-intro', { sprint: sprint.name, startsOn: sprint.startsOn })),
    textField({
      field: fields.goal,
      label: say('plan-goal'),
      hint: say('plan-goal-hint'),
      optional: true,
      initial: sprint.goal,
      maxLength: GOAL_MAX_LENGTH,
    }),
    dateField({ field: fields.endsOn, label: say('plan-last-day'), initial: sprint.endsOn }),
    timeField({
      field: fields.closesAt,
      label: say('plan-closing-time'),
      hint: say('plan-closing-time-hint', { timeZone: team.timeZone }),
      initial: sprint.closesAt,
    }),
    awayDaysField(fields.awayDays, sprint.awayDays === undefined ? '' : number(sprint.awayDays)),
    section(mrkdwn('edit-sprint-next')),
  ]);
}

export function cardEditedMessage({ heading, card, changes }: EditedCard): MessageView {
  if (changes.length === 0) return messageView([section(mrkdwn('edit-nothing'))]);
  const saved = mrkdwn('edit-card-saved', { sprint: heading.sprint.name, ...numbered(card) });
  return messageView([section(saved), section(mrkdwn('edit-next'))]);
}

export function sprintEditedMessage({ heading: { sprint }, changes }: EditedSprint): MessageView {
  if (changes.length === 0) return messageView([section(mrkdwn('edit-nothing'))]);
  const { name, endsOn, closesAt } = sprint;
  const saved = mrkdwn('edit-sprint-saved', { sprint: name, endsOn, closesAt });
  return messageView([section(saved), section(mrkdwn('edit-next'))]);
}
