/** What a plan may have got wrong, and the sprints that it is compared with. As mrkdwn. */
import type { PlanWarning, RecentSprint } from '../app/planning/plan-sprint.ts';
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

export function recentSprint({
  sprintName,
  commitmentPoints,
  velocityPoints,
  verdict,
}: RecentSprint): string {
  return mrkdwn('plan-recent-line', {
    sprint: sprintName,
    committed: commitmentPoints,
    velocity:
      velocityPoints === undefined
        ? say('plan-recent-velocity-unknown')
        : say('plan-recent-velocity', { points: velocityPoints }),
    outcome: say(verdict === undefined ? 'plan-recent-imported' : OUTCOMES[verdict]),
  });
}
