/** When each body of work that a team keeps is finished, in their order, and what is kept of what was told. */
import { releaseForecast, type WorkAhead } from '../../forecast/release-forecast.ts';
import type { Day } from '../../sprint/calendar.ts';
import type { ForecastBody } from '../advice/advice.ts';
import {
  forecastGround,
  nextSprint,
  type TeamForecasts,
  teamForecasts,
  workQuestion,
} from '../advice/forecast-advice.ts';
import { pastSprints } from '../history/team-history.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import { todayOf } from '../team/place.ts';
import type { Member, Sprint, Team } from '../team/team.ts';
import { type BodyOfWork, datesOf, isToDo, sharesOf } from './body-of-work.ts';

export interface BodyForecasts {
  /** The first day of the first sprint that can work on them, and the days from sprint to sprint. */
  readonly startsOn: Day;
  readonly sprintLengthDays: number;
  /** Those still to do, in their order. */
  readonly bodies: readonly ForecastBody[];
}

/** @param throughSprint chances are wanted up to the end of this sprint at least */
export async function forecastBodies(
  tx: Transaction,
  team: Team,
  members: readonly Member[],
  on: Day,
  throughSprint = 0,
): Promise<BodyForecasts> {
  const { startsOn } = await nextSprint(tx.read, team, on);
  const ground = await forecastGround(tx.read, team, members, startsOn);
  const forecasts = teamForecasts(await pastSprints(tx, team), ground);
  const bodies = (await tx.read.bodiesOf(team.id)).filter(isToDo);
  const sprints = await tx.read.sprintsOf(team.id);
  return {
    startsOn,
    sprintLengthDays: ground.sprintLengthDays,
    bodies: inTurn(forecasts, bodies, throughSprint).map((forecast) => ({
      ...forecast,
      sprintsSinceSaid: sprintsSince(forecast.body.saidAt, sprints),
    })),
  };
}

/**
 * A body with a share has it from the first sprint on; the others are done one after the other with what is left of the
 * sprints.
 *
 * @param bodies in their order
 */
function inTurn(
  forecasts: TeamForecasts,
  bodies: readonly BodyOfWork[],
  throughSprint = 0,
): Omit<ForecastBody, 'sprintsSinceSaid'>[] {
  const inTurnPercent = 100 - sharesOf(bodies);
  const ahead: WorkAhead[] = [];
  return bodies.map((body) => {
    const { leftPoints: backlogPoints, growthPoints, growthMostPoints, sharePercent } = body;
    const work = { backlogPoints, growthPoints, growthMostPoints };
    const { asked, growth } = workQuestion(forecasts, work, sharePercent ?? inTurnPercent);
    // Measured growth is of the work in hand, whichever that is.
    const growsInTurnOnly = growthPoints === undefined;
    const before = sharePercent === undefined ? [...ahead] : [];
    const forecast = releaseForecast({ ...asked, growsInTurnOnly, ahead: before, throughSprint });
    if (sharePercent === undefined) {
      ahead.push({
        points: backlogPoints,
        growthPoints: asked.scopeGrowthPoints,
        growthDeviation: asked.scopeGrowthDeviation ?? 0,
        growsWaiting: !growsInTurnOnly,
      });
    }
    return { body, forecast, growth };
  });
}

/** Closed since then, here or where they were imported from; one that is open for corrections isn't closed. */
function sprintsSince(since: Date, sprints: readonly Sprint[]): number {
  return sprints.filter(
    ({ state, closedAt }) => state === 'closed' && closedAt !== undefined && closedAt > since,
  ).length;
}

/** Keeps what is told of the team's bodies of work on this day: when a sprint has closed, and when one was changed. */
export async function tellDates(
  tx: Transaction,
  team: Team,
  members: readonly Member[],
  now: Date,
): Promise<BodyForecasts> {
  const toldOn = todayOf(team, now);
  const told = await forecastBodies(tx, team, members, toldOn);
  await tx.write.bodies.tell(
    told.bodies.flatMap(({ body: { id: bodyId, leftPoints }, forecast, sprintsSinceSaid }) =>
      'undefined' in forecast ? [] : [{ bodyId, toldOn, leftPoints, sprintsSinceSaid, ...datesOf(forecast) }],
    ),
  );
  return told;
}

/** The same after a sprint has closed, for a team that keeps any. */
export async function tellDatesAfterSprint(tx: Transaction, team: Team, now: Date): Promise<void> {
  if ((await keptNames(tx.read, team)).length > 0)
    await tellDates(tx, team, await tx.read.membersOf(team.id), now);
}

/** Names of the bodies of work that the team keeps and has still to do. */
export async function keptNames(read: Reading, team: Team): Promise<string[]> {
  return (await read.bodiesOf(team.id)).filter(isToDo).map(({ name }) => name);
}
