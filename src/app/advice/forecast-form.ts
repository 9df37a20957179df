/** What one should know before asking when a body of work will be finished. It forecasts nothing itself. */
import { LATEST_SPRINTS } from '../../forecast/release-forecast.ts';
import { knownVelocities, pastSprints } from '../history/team-history.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Actor, Team } from '../team/team.ts';
import { audienceBy, type TeamReference } from './ask-advice.ts';

export interface ForecastForm {
  readonly team: Team;
  /** Of the sprints that a forecast is made from, oldest first; fewer or none while few have closed. */
  readonly velocities: readonly number[];
}

/** For members and the product owner. @throws Refusal those of finding the team. */
export async function forecastForm(
  deps: AppDependencies,
  actor: Actor,
  reference: TeamReference,
): Promise<ForecastForm> {
  return deps.store.transaction(async (tx) => {
    const { team } = await audienceBy(tx.read, actor, reference);
    return { team, velocities: knownVelocities(await pastSprints(tx, team)).slice(-LATEST_SPRINTS) };
  });
}
