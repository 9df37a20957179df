/** Past sprints of which it is known how each card went. */
import { type SQL, sql } from 'drizzle-orm';
import type { WatchedSprint } from '../../app/history/watched-sprint.ts';
import { pastSprints, sprints } from '../schema.ts';
import { frozenSelect } from './frozen-statement.ts';
import type { SqlSession } from './sql-session.ts';

function watched(which: SQL) {
  const { teamId, velocityPoints, trace, cardEvenings } = pastSprints;
  return frozenSelect(
    { teamId, velocityPoints, trace, cardEvenings },
    sql`from ${pastSprints} join ${sprints} on ${sprints.id} = ${pastSprints.sprintId}
      where ${sprints.state} = 'closed' and ${velocityPoints} is not null and ${cardEvenings} is not null ${which}`,
  );
}

const { teamId, endsOn, sprintId } = pastSprints;
const OF_EVERY_TEAM = watched(sql`order by ${teamId}, ${endsOn}, ${sprintId}`);
const LATEST_OF_TEAM = watched(
  sql`and ${teamId} = ${sql.placeholder('team')} order by ${endsOn} desc, ${sprintId} desc
    limit ${sql.placeholder('most')}`,
);

/** Those of every team, each team's oldest first. */
export async function allWatchedSprints(session: SqlSession): Promise<WatchedSprint[]> {
  return (await OF_EVERY_TEAM(session, {})) as WatchedSprint[];
}

/** The latest of one team, oldest first. */
export async function latestWatchedSprints(
  session: SqlSession,
  teamId: string,
  most: number,
): Promise<WatchedSprint[]> {
  return ((await LATEST_OF_TEAM(session, { team: teamId, most })) as WatchedSprint[]).reverse();
}
