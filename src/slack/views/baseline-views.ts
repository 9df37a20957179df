/** The form in which the baseline sprint is chosen, and what confirms it. */
import type { ModalView } from '@slack/types';
import type { BaselineChoice, BaselineForm, BaselineNamed } from '../../app/history/name-baseline.ts';
import { formatPercent } from '../../sprint/percent.ts';
import { formatPointsWithUnit } from '../../sprint/points.ts';
import { typed } from '../../words/typed-text.ts';
import { encodeContext } from '../form-contexts.ts';
import { COMMAND, formId } from '../ids.ts';
import { code, context, section } from './block-builders.ts';
import { datedDay, sprintChoiceLabel } from './closed-sprint-words.ts';
import { choiceField } from './form-inputs.ts';
import { formView, withReplyTo } from './form-view.ts';
import { type MessageView, messageView } from './message-view.ts';
import { counted } from './sprint-words.ts';

export const BASELINE_FIELDS = {
  sprintId: 'sprintId',
} as const;

/** The choice of no particular sprint in the baseline form; ids of sprints are longer. */
export const FIRST_SPRINT = 'first';

export function baselineFormView(form: BaselineForm, replyTo?: string): ModalView {
  const { team, choices, first, named, leftOut } = form;
  const frame = {
    callbackId: formId('baseline'),
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
      field: BASELINE_FIELDS.sprintId,
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

export function baselineNamedMessage({
  team,
  baseline,
  isFirst,
  before,
  latest,
}: BaselineNamed): MessageView {
  const which = `${sprintWords(baseline)}${isFirst ? ', the first sprint with a velocity' : ''}`;
  if (!before) {
    return messageView([
      section(`Velocity growth of ${typed(team.name)} is measured by ${which}, as it was before.`),
    ]);
  }
  const change = latest
    ? ` For ${typed(latest.name)}, the latest, it is then ${formatPercent(latest.growthAfter)} instead of ${formatPercent(latest.growthBefore)}.`
    : '';
  return messageView([
    section(
      `Velocity growth of ${typed(team.name)} is now measured by ${which}. Until now it was measured by ${sprintWords(before)}.${change}`,
    ),
    section(
      'Verdicts that were posted keep their numbers. The next ones, and the history, use the new baseline.',
    ),
  ]);
}

function sprintWords({ name, endsOn, velocityPoints }: BaselineChoice): string {
  return `${typed(name)} (ended ${datedDay(endsOn)}, ${formatPointsWithUnit(velocityPoints)} finished)`;
}
