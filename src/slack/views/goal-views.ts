/** Whether the sprint goal was met: the question to one person, the form for more than a click, and the reply to the command. */
import type { ModalView } from '@slack/types';
import { GOAL_NOTE_MAX_LENGTH, type GoalForm, type RecordedGoal } from '../../app/closing/record-goal.ts';
import type { ContentOf } from '../../app/posting/post-kinds.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { closingTime } from '../../words/sprint.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import { actions, button, context, lead, section } from './block-builders.ts';
import { choiceField, textField } from './form-inputs.ts';
import { formView } from './form-view.ts';
import { type MessageView, messageView } from './message-view.ts';

export const GOAL_FIELDS = { met: 'met', note: 'note' } as const;

const ANSWERS = ['yes', 'partly', 'no'] as const;
const BUTTONS = { yes: ACTIONS.goalYes, partly: ACTIONS.goalPartly, no: ACTIONS.goalNo } as const;

export function goalQuestionMessage({ heading, outcome }: ContentOf<'goal-question'>): MessageView {
  const { sprint } = heading;
  const value = encodeValue({ sprintId: sprint.id });
  if (outcome) {
    const { met, note } = outcome;
    return messageView([
      section(mrkdwn('goal-recorded', { sprint: sprint.name, met })),
      ...(note === '' ? [] : [section(mrkdwn('verdict-goal-note', { note }))]),
      actions([button(say('goal-explain'), { actionId: ACTIONS.explainGoal, value })]),
    ]);
  }
  return messageView([
    lead(say('goal-question', { sprint: sprint.name })),
    section(mrkdwn('goal-question-goal', { goal: sprint.goal, closes: closingTime(heading) })),
    actions(ANSWERS.map((met) => button(say('goal-answer', { met }), { actionId: BUTTONS[met], value }))),
    context(mrkdwn('goal-question-shown')),
  ]);
}

export function goalFormView({ heading: { sprint }, outcome }: GoalForm, replyTo?: string): ModalView {
  const frame = {
    form: 'goal',
    title: say('goal-title'),
    submit: say('goal-submit'),
    context: { sprintId: sprint.id },
    replyTo,
  };
  const asked =
    sprint.goal.trim() === ''
      ? mrkdwn('goal-form-unnamed', { sprint: sprint.name })
      : mrkdwn('goal-form', { sprint: sprint.name, goal: sprint.goal });
  return formView(frame, [
    section(asked),
    choiceField({
      field: GOAL_FIELDS.met,
      label: say('goal-met'),
      choices: ANSWERS.map((met) => ({ value: met, label: say('goal-answer', { met }) })),
      initial: outcome?.met,
    }),
    textField({
      field: GOAL_FIELDS.note,
      label: say('goal-note'),
      hint: say('goal-note-hint'),
      initial: outcome?.note,
      maxLength: GOAL_NOTE_MAX_LENGTH,
      optional: true,
    }),
  ]);
}

export function goalRecordedReply({ heading: { sprint }, outcome: { met } }: RecordedGoal): MessageView {
  return messageView([
    section(mrkdwn('goal-recorded', { sprint: sprint.name, met })),
    section(mrkdwn('goal-recorded-next')),
  ]);
}
