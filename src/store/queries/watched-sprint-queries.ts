/** Past sprints of which it is known how each card went. */
import { and, asc, desc, eq, isNotNull } from 'drizzle-orm';
import type { WatchedSprint } from '../../app/history/watched-sprint.ts';
import { pastSprints, sprints } from '../schema.ts';
import type { SqlSession } from './sql-session.ts';

const COLUMNS = {
  teamId: pastSprints.teamId,
  velocityPoints: pastSprints.velocityPoints,
  trace: pastSprints.trace,
  cardEvenings: pastSprints.cardEvenings,
};

const IS_WATCHED = and(
  eq(sprints.state, 'closed'),
  isNotNull(pastSprints.velocityPoints),
  isNotNull(pastSprints.cardEvenings),
);

/** Those of every team, each team's oldest first. */
export async function allWatchedSprints(session: SqlSession): Promise<WatchedSprint[]> {
  const rows = await session
    .select(COLUMNS)
    .from(pastSprints)
    .innerJoin(sprints, eq(sprints.id, pastSprints.sprintId))
    .where(IS_WATCHED)
    .orderBy(asc(pastSprints.teamId), asc(pastSprints.endsOn), asc(pastSprints.sprintId));
  return rows as WatchedSprint[];
}

/** The latest of one team, oldest first. */
export async function latestWatchedSprints(
  session: SqlSession,
  teamId: string,
  most: number,
): Promise<WatchedSprint[]> {
  const rows = await session
    .select(COLUMNS)
    .from(pastSprints)
    .innerJoin(sprints, eq(sprints.id, pastSprints.sprintId))
    .where(and(IS_WATCHED, eq(pastSprints.teamId, teamId)))
    .orderBy(desc(pastSprints.endsOn), desc(pastSprints.sprintId))
    .limit(most);
  return (rows as WatchedSprint[]).reverse();
}
