/** What a running sprint will have finished by its end, from its state now and the team's history. */
import type { Amount } from '../../forecast/planned-and-projected.ts';
import {
  type ProjectionHistory,
  projectVelocity,
  type VelocityProjection,
} from '../../forecast/project-velocity.ts';
import { type SprintSoFar, sprintSoFar } from '../../forecast/sprint-so-far.ts';
import type { Day } from '../../sprint/calendar.ts';
import { type Reason, reason } from '../../sprint/undefined-value.ts';
import type { SprintCardState } from '../cards/card-line.ts';
import type { SprintTime } from '../clock/sprint-time.ts';
import { rememberedHistory } from '../history/team-history.ts';
import type { Transaction } from '../ports/store.ts';
import type { Sprint, Team } from '../team/team.ts';

/** With fewer of its own closed sprints a team's projection would mostly be other teams' or a guess. */
export const LEAST_OWN_SPRINTS = 3;

export interface SprintProjection extends VelocityProjection {
  readonly now: SprintSoFar;
  /** What it would finish, if it held so many points more. */
  readonly distributionWith: (morePoints: number) => Amount;
  /** Whether sprints of other teams are in it. */
  readonly othersLend: boolean;
}

/** Why there is no time ahead to forecast. Undefined when there is. */
export function whyNoTimeAhead(
  sprint: Pick<Sprint, 'startsOn' | 'endsOn' | 'reopenedAt'>,
  time: SprintTime,
  on: Day,
): Reason | undefined {
  if (on < sprint.startsOn) return reason('not-begun');
  if (sprint.reopenedAt !== undefined) return reason('corrections-only');
  if (time.total === 0) return reason('no-working-day');
  if (time.gone === time.total || on > sprint.endsOn) return reason('last-day-over');
  return undefined;
}

/**
 * Always defined, however little history there is: the caller looks at `ownSprints`.
 *
 * @param pastVersion of the workspace's past, read before in the same transaction; left out: it is read now
 */
export async function sprintProjection(
  tx: Transaction,
  team: Team,
  states: readonly SprintCardState[],
  { elapsedShare }: Pick<SprintTime, 'elapsedShare'>,
  pastVersion?: string,
): Promise<SprintProjection> {
  const version = pastVersion ?? (await tx.read.pastVersion(team.workspaceId));
  const history = await rememberedHistory(tx, team, elapsedShare, version);
  return projectionFrom(history, team.id, sprintSoFar(states));
}

/** Pure part. */
export function projectionFrom(
  history: ProjectionHistory,
  teamId: string,
  now: SprintSoFar,
): SprintProjection {
  const projected = projectVelocity(history, teamId, now);
  return {
    ...projected,
    now,
    distributionWith: (morePoints) =>
      morePoints === 0
        ? projected.distribution
        : projectVelocity(history, teamId, { ...now, cardPoints: now.cardPoints + morePoints }).distribution,
    othersLend: history.sprints.some(({ team }) => team !== teamId),
  };
}
