/** What a plan may have got wrong, and the sprints that it is compared with. As mrkdwn. */
import type { RecentSprint } from '../app/planning/plan-sprint.ts';
import type { PlanWarning } from '../app/planning/plan-warnings.ts';
import { mrkdwn, say } from './say.ts';

export function planWarning(warning: PlanWarning): string {
  switch (warning.code) {
    case 'off-scale':
      return mrkdwn('plan-check-off-scale', {
        ...named(warning.cardNumbers),
        scale: warning.scale.map(String),
      });
    case 'alike':
      return mrkdwn('plan-check-alike', named(warning.cardNumbers));
    case 'still-in-work':
      return mrkdwn('plan-check-still-in-work', {
        ...named(warning.cardNumbers),
        sprint: warning.sprintName,
        day: warning.endsOn,
      });
    case 'finished-before':
      return mrkdwn('plan-check-finished-before', {
        ...named(warning.cardNumbers),
        sprint: warning.sprintName,
      });
    case 'no-owner':
      return mrkdwn('plan-check-no-owner', named(warning.cardNumbers));
    default:
      return mrkdwn(`plan-check-${warning.code}`);
  }
}

function named(cardNumbers: readonly number[]): { count: number; cards: string[] } {
  return { count: cardNumbers.length, cards: cardNumbers.map(String) };
}

const OUTCOMES = {
  kept: 'plan-recent-kept',
  missed: 'plan-recent-missed',
  'no plan': 'plan-recent-no-plan',
} as const;

/** @param planDays working days of the plan beside which it is shown: one of another length says so */
export function recentSprint(
  { sprintName, workingDays, commitmentPoints, velocityPoints, verdict }: RecentSprint,
  planDays: number,
): string {
  return mrkdwn('plan-recent-line', {
    length: workingDays === planDays ? 'same' : 'another',
    days: workingDays,
    sprint: sprintName,
    committed: commitmentPoints,
    velocity:
      velocityPoints === undefined
        ? say('plan-recent-velocity-unknown')
        : say('plan-recent-velocity', { points: velocityPoints }),
    outcome: say(verdict === undefined ? 'plan-recent-imported' : OUTCOMES[verdict]),
  });
}
