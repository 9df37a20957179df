/** The form in which the baseline sprint is chosen, and what confirms it. */
import type { ModalView } from '@slack/types';
import type {
  BaselineChoice,
  BaselineForm,
  BaselineNamed,
  MedianChoice,
} from '../../app/history/name-baseline.ts';
import type { BaselineRule } from '../../app/team/team.ts';
import { percent, points } from '../../words/amounts.ts';
import { markup, mrkdwn, say } from '../../words/say.ts';
import { pastSprintChoice } from '../../words/sprint.ts';
import { context, section } from './block-builders.ts';
import { choiceField } from './form-inputs.ts';
import { formView } from './form-view.ts';
import { type MessageView, messageView } from './message-view.ts';

export const BASELINE_FIELDS = {
  sprintId: 'sprintId',
} as const;

/** The choices of no particular sprint in the baseline form; ids of sprints are longer. */
export const BASELINE_RULES: readonly BaselineRule[] = ['first', 'first-three'];

export function baselineFormView(form: BaselineForm, replyTo?: string): ModalView {
  const { team, choices, first, median, named, leftOut } = form;
  const frame = {
    form: 'baseline',
    title: say('baseline-title'),
    submit: say('baseline-submit'),
    context: { teamId: team.id },
    replyTo,
  };
  return formView(frame, [
    section(mrkdwn('baseline-intro', { team: team.name })),
    choiceField({
      field: BASELINE_FIELDS.sprintId,
      label: say('baseline-sprint'),
      hint: say('baseline-effect'),
      choices: [
        {
          value: 'first',
          label: pastSprintChoice(first, points(first.velocityPoints), 'past-sprint-first-choice'),
        },
        { value: 'first-three', label: say('baseline-median-choice', medianArgs(median)) },
        ...choices.map((choice) => ({
          value: choice.sprintId,
          label: pastSprintChoice(choice, points(choice.velocityPoints)),
        })),
      ],
      initial: named?.sprintId ?? team.baselineRule,
    }),
    ...(leftOut > 0 ? [context(mrkdwn('baseline-older', { sprints: leftOut }))] : []),
  ]);
}

export function baselineNamedMessage(named: BaselineNamed): MessageView {
  return messageView([
    section(baselineSentence(named)),
    ...(named.before ? [section(mrkdwn('baseline-effect'))] : []),
  ]);
}

/** What the team's velocity growth is compared with now, and what that changes. */
function baselineSentence({ team, baseline, isFirst, before, latest }: BaselineNamed): string {
  const which = (choice: BaselineChoice | MedianChoice, place: 'first' | 'later') =>
    'rule' in choice
      ? markup('baseline-median', medianArgs(choice))
      : markup('baseline-which', {
          sprint: choice.name,
          endsOn: choice.endsOn,
          velocity: choice.velocityPoints,
          place,
        });
  const args = { team: team.name, baseline: which(baseline, isFirst ? 'first' : 'later') };
  if (!before) return mrkdwn('baseline-unchanged', args);
  const changed = mrkdwn('baseline-changed', { ...args, before: which(before, 'later') });
  if (!latest) return changed;
  const { name, growthAfter, growthBefore } = latest;
  const change = percent(growthAfter) === percent(growthBefore) ? 'none' : 'some';
  const growth = { sprint: name, after: growthAfter, before: growthBefore };
  return `${changed} ${mrkdwn('baseline-latest', { change, ...growth })}`;
}

function medianArgs({ velocityPoints }: MedianChoice) {
  return {
    known: velocityPoints === undefined ? 'not-yet' : 'known',
    velocity: velocityPoints ?? 0,
  } as const;
}
