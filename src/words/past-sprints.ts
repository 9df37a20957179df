/** Sprints that are over, in a list of choices and in sentences about what they were worth. */
import type { BaselineChoice, BaselineNamed } from '../app/history/name-baseline.ts';
import type { ValueRecorded } from '../app/history/record-value.ts';
import { isDefined } from '../sprint/undefined-value.ts';
import { markup, mrkdwn, say } from './say.ts';
import { shortened } from './typed-text.ts';
import { reasonSentence } from './undefined.ts';

/** The platform's limit for the text of an option (docs.slack.dev/reference/block-kit/composition-objects/option-object). */
const OPTION_MAX_LENGTH = 75;

/**
 * A closed sprint in a list of choices, its name cut so that what is said of it can always be seen.
 *
 * @param said at most 30 characters
 */
export function pastSprintChoice(
  { name, endsOn }: { readonly name: string; readonly endsOn: string },
  said: string,
  id: 'past-sprint-choice' | 'past-sprint-first-choice' = 'past-sprint-choice',
): string {
  const room = OPTION_MAX_LENGTH - say(id, { sprint: '', endsOn, said }).length;
  return say(id, { sprint: shortened(name, room), endsOn, said });
}

export function recordedSentence({ sprint, value, previousValue }: ValueRecorded): string {
  const args = { sprint: sprint.name, endsOn: sprint.endsOn, value };
  if (previousValue === value) return mrkdwn('value-same', args);
  if (previousValue === undefined) return mrkdwn('value-recorded', args);
  return mrkdwn('value-replaced', { ...args, previous: previousValue });
}

export function growthSentence({ sprint, value, growth, measuredBy }: ValueRecorded): string {
  if (!measuredBy) return mrkdwn('value-no-measure');
  if (sprint.sprintId === measuredBy.sprintId) return mrkdwn('value-is-measure');
  const { valueGrowth, velocityGrowth, valuePerPointGrowth } = growth;
  for (const ratio of [valueGrowth, velocityGrowth]) {
    if (!isDefined(ratio)) return `${mrkdwn('value-no-growth')} ${reasonSentence(ratio.undefined)}`;
  }
  const both = {
    sprint: measuredBy.name,
    value: valueGrowth as number,
    velocity: velocityGrowth as number,
  };
  if (!isDefined(valuePerPointGrowth)) {
    return `${mrkdwn('value-growth', both)} ${reasonSentence(valuePerPointGrowth.undefined)}`;
  }
  if (value <= 0) return mrkdwn('value-growth', both);
  return mrkdwn('value-growth-point', { ...both, point: valuePerPointGrowth });
}

/** What the team's velocity growth is compared with now, and what that changes. */
export function baselineSentence({ team, baseline, isFirst, before, latest }: BaselineNamed): string {
  const which = (choice: BaselineChoice, place: 'first' | 'later') =>
    markup('baseline-which', {
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
  return `${changed} ${mrkdwn('baseline-latest', { sprint: name, after: growthAfter, before: growthBefore })}`;
}
