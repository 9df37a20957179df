/**
 * When the parts that several teams do of one body of work are all finished. A part is what a team keeps by the same name.
 * Only the answer about all of them together leaves this file: no date and no pace of a single team.
 */

import { jointCurve, jointDates, type PartForecast } from '../../forecast/joint-release.ts';
import { MOST_SPRINTS } from '../../forecast/release-forecast.ts';
import type { JointAdvice } from '../advice/advice.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { readOrWrite } from '../read-or-write.ts';
import { Refusal } from '../refusal.ts';
import { audienceBy, type TeamReference, teamsReadBy, todayOf } from '../team/place.ts';
import type { Actor, Team } from '../team/team.ts';
import { type BodyOfWork, calledSo, isSameName, isToDo } from './body-of-work.ts';
import { forecastBodies } from './forecast-bodies.ts';

/** As many points as a picture of the joint chance has room for. */
const MOST_CURVE_POINTS = 100;

/**
 * For who may read the team where it is asked; of other teams only those count that they may read as well.
 *
 * @throws Refusal `no-such-body`, `no-other-part`, and those of finding the team.
 */
export async function jointForecast(
  deps: AppDependencies,
  actor: Actor,
  { reference, ...place }: TeamReference & { readonly reference: string },
): Promise<JointAdvice> {
  return readOrWrite(deps.store, async (tx) => {
    const { team } = await audienceBy(tx.read, actor, place);
    const { id, name, channelId, timeZone } = team;
    const now = deps.clock.now();
    const body = await bodyCalled(tx, team, reference);
    const parts: Part[] = [];
    for (const other of await teamsReadBy(tx.read, actor)) {
      const part = await partOf(tx, other, body.name, now);
      if (part) parts.push(part);
    }
    if (parts.length < 2) throw new Refusal('no-other-part', { body: body.name });
    const known = parts.flatMap(({ forecast }) => forecast ?? []);
    return {
      question: { about: 'joint' },
      team: { id, name, channelId, timeZone },
      on: todayOf(team, now),
      name: body.name,
      teamNames: parts.map(({ teamName }) => teamName),
      staleTeamNames: parts.filter(({ isStale }) => isStale).map(({ teamName }) => teamName),
      unknownTeamNames: parts.filter(({ forecast }) => !forecast).map(({ teamName }) => teamName),
      joint:
        known.length < parts.length
          ? undefined
          : { dates: jointDates(known), curve: jointCurve(known, MOST_CURVE_POINTS) },
    };
  });
}

interface Part {
  readonly teamName: string;
  readonly isStale: boolean;
  readonly forecast: PartForecast | undefined;
}

async function bodyCalled(tx: Transaction, team: Team, reference: string): Promise<BodyOfWork> {
  const toDo = (await tx.read.bodiesOf(team.id)).filter(isToDo);
  const body = calledSo(toDo, reference);
  if (!body) throw new Refusal('no-such-body', { known: toDo.map(({ name }) => name) });
  return body;
}

/** Undefined: the team keeps nothing by that name. */
async function partOf(tx: Transaction, team: Team, name: string, now: Date): Promise<Part | undefined> {
  const isPart = (body: BodyOfWork): boolean => isToDo(body) && isSameName(body.name, name);
  if (!(await tx.read.bodiesOf(team.id)).some(isPart)) return undefined;
  const members = await tx.read.membersOf(team.id);
  const forecasts = await forecastBodies(tx, team, members, todayOf(team, now), MOST_SPRINTS);
  const kept = forecasts.bodies.find(({ body }) => isPart(body));
  if (!kept) return undefined;
  const { startsOn, sprintLengthDays } = forecasts;
  const { forecast, sprintsSinceSaid } = kept;
  return {
    teamName: team.name,
    isStale: sprintsSinceSaid > 0,
    forecast:
      'undefined' in forecast
        ? undefined
        : { startsOn, sprintLengthDays, chanceBySprint: forecast.chanceBySprint },
  };
}
