/** What is told of the bodies of work that a team keeps: their dates now, and how these moved. Reads only. */
import type { KeptAdvice } from '../advice/advice.ts';
import type { Transaction } from '../ports/store.ts';
import type { Team } from '../team/team.ts';
import { doneLatestFirst } from './body-of-work.ts';
import type { BodyForecasts } from './forecast-bodies.ts';

/** Of those that are done, the latest, to look back at. */
const MOST_DONE = 3;

export async function keptOf(
  tx: Transaction,
  team: Team,
  { startsOn, sprintLengthDays, bodies }: BodyForecasts,
): Promise<Pick<KeptAdvice, 'startsOn' | 'sprintLengthDays' | 'bodies' | 'done'>> {
  const told = Map.groupBy(await tx.read.toldDatesOf(team.id), ({ bodyId }) => bodyId);
  const done = doneLatestFirst(await tx.read.bodiesOf(team.id));
  return {
    startsOn,
    sprintLengthDays,
    bodies: bodies.map((forecast) => ({ ...forecast, told: told.get(forecast.body.id) ?? [] })),
    done: done.slice(0, MOST_DONE).map((body) => ({ body, told: told.get(body.id) ?? [] })),
  };
}
