/** Asks somebody who has cards in the sprints of several teams for which one they want to answer. */
import type { ModalView } from '@slack/types';
import type { Sprint, Team } from '../../../app/team/team.ts';
import { mrkdwn, say } from '../../../words/say.ts';
import { section } from '../block-builders.ts';
import { choiceField } from '../form-inputs.ts';
import { formView } from '../form-view.ts';

export const CHOOSE_SPRINT = 'choose-sprint';
export const CHOOSE_SPRINT_FIELDS = { sprintId: 'sprintId' } as const;

export function chooseSprintFormView(
  choices: readonly { readonly team: Pick<Team, 'name'>; readonly sprint: Pick<Sprint, 'id' | 'name'> }[],
): ModalView {
  const frame = {
    form: CHOOSE_SPRINT,
    title: say('answer-title'),
    submit: say('answer-choose-submit'),
    context: {},
  };
  return formView(frame, [
    section(mrkdwn('answer-choose')),
    choiceField({
      field: CHOOSE_SPRINT_FIELDS.sprintId,
      label: say('answer-choose-sprint'),
      choices: choices.map(({ team, sprint }) => ({
        value: sprint.id,
        label: say('answer-choose-choice', { team: team.name, sprint: sprint.name }),
      })),
    }),
  ]);
}
