/** The form in which the baseline sprint is chosen. */
import type { ModalView } from '@slack/types';
import type { BaselineChoice, BaselineForm } from '../../app/history/name-baseline.ts';
import { formatPointsWithUnit } from '../../sprint/points.ts';
import { typed } from '../../words/typed-text.ts';
import { encodeContext } from '../form-contexts.ts';
import { COMMAND, FIELDS, FIRST_SPRINT, FORMS } from '../ids.ts';
import { code, context, section } from './block-builders.ts';
import { sprintChoiceLabel } from './closed-sprint-words.ts';
import { choiceField } from './form-inputs.ts';
import { formView, withReplyTo } from './form-view.ts';
import { counted } from './sprint-words.ts';

export function baselineFormView(form: BaselineForm, replyTo?: string): ModalView {
  const { team, choices, first, named, leftOut } = form;
  const frame = {
    callbackId: FORMS.baseline,
    title: 'Baseline sprint',
    submit: 'Save',
    context: encodeContext(withReplyTo({ teamId: team.id }, replyTo)),
  };
  const older = `${counted(leftOut, 'older sprint')} ${leftOut === 1 ? 'is' : 'are'} not in the list; name one with ${code(`${COMMAND} baseline`)} and its name.`;
  return formView(frame, [
    section(
      `Velocity growth of ${typed(team.name)} is the velocity of a sprint, measured by that of the baseline sprint. Choose one in which the team worked as it usually did then.`,
    ),
    choiceField({
      field: FIELDS.baseline.sprintId,
      label: 'Baseline sprint',
      hint: 'Verdicts that were posted keep their numbers. The next ones, and the history, use the new baseline.',
      choices: [
        { value: FIRST_SPRINT, label: label(first, 'First: ') },
        ...choices.map((choice) => ({ value: choice.sprintId, label: label(choice) })),
      ],
      initial: named?.sprintId ?? FIRST_SPRINT,
    }),
    ...(leftOut > 0 ? [context(older)] : []),
  ]);
}

function label(choice: BaselineChoice, head?: string): string {
  return sprintChoiceLabel(choice, formatPointsWithUnit(choice.velocityPoints), head);
}
