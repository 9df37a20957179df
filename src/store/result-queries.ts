/** Reads and adds the numbers of finished sprints as they were posted. Versions are added, never edited. */
import { and, asc, desc, eq, ne, sql } from 'drizzle-orm';
import type { Transaction } from '../app/ports.ts';
import type { SprintResult } from '../app/team.ts';
import { pastSprints, sprintResults, sprints } from './schema.ts';
import { sprintOf } from './sprint-queries.ts';
import type { SqlSession } from './sql-session.ts';

export type ResultQueries = Pick<
  Transaction,
  'insertResult' | 'latestResult' | 'closedSprintsOf' | 'baselineVelocityPoints'
>;

function resultOf(row: typeof sprintResults.$inferSelect): SprintResult {
  const { sprintId, version, recordedAt, cancelled, summary } = row;
  return { sprintId, version, recordedAt, cancelled, summary };
}

export function resultQueries(session: SqlSession): ResultQueries {
  /** Of the sprint at hand, so that no other team's results are looked at. */
  const latestVelocityPoints = session
    .select({ velocityPoints: sprintResults.velocityPoints })
    .from(sprintResults)
    .where(eq(sprintResults.sprintId, sprints.id))
    .orderBy(desc(sprintResults.version))
    .limit(1);

  return {
    async insertResult(result) {
      const { commitmentPoints, pulledInPoints, surprisePoints, driftPoints } = result.summary.totals;
      const { workedPoints, velocityPoints, loadPoints } = result.summary.totals;
      await session.insert(sprintResults).values({
        ...result,
        commitmentPoints,
        pulledInPoints,
        surprisePoints,
        driftPoints,
        workedPoints,
        velocityPoints,
        loadPoints,
      });
    },

    async latestResult(sprintId) {
      const [row] = await session
        .select()
        .from(sprintResults)
        .where(eq(sprintResults.sprintId, sprintId))
        .orderBy(desc(sprintResults.version))
        .limit(1);
      return row && resultOf(row);
    },

    async closedSprintsOf(teamId) {
      const rows = await session
        .selectDistinctOn([sprints.endsOn, sprints.startsOn, sprints.id], {
          sprint: sprints,
          result: sprintResults,
        })
        .from(sprints)
        .innerJoin(sprintResults, eq(sprintResults.sprintId, sprints.id))
        .where(and(eq(sprints.teamId, teamId), eq(sprints.state, 'closed')))
        .orderBy(asc(sprints.endsOn), asc(sprints.startsOn), asc(sprints.id), desc(sprintResults.version));
      return rows.map((row) => ({ sprint: sprintOf(row.sprint), result: resultOf(row.result) }));
    },

    async baselineVelocityPoints(team, exceptSprintId) {
      const { baselineSprintId } = team;
      // The named sprint is its own baseline.
      if (baselineSprintId === exceptSprintId) return undefined;
      // Sprints that were run here have a result; imported ones have only what they left behind.
      const velocity = sql<number | null>`coalesce((${latestVelocityPoints}), ${pastSprints.velocityPoints})`;
      const velocityPoints = velocity.mapWith(pastSprints.velocityPoints).as('velocity');
      const closed = () =>
        session
          .select({ velocityPoints })
          .from(sprints)
          .leftJoin(pastSprints, eq(pastSprints.sprintId, sprints.id))
          .$dynamic();
      const hasVelocity = and(eq(sprints.teamId, team.id), eq(sprints.state, 'closed'), sql`${velocity} > 0`);
      if (baselineSprintId !== undefined) {
        const [named] = await closed().where(and(hasVelocity, eq(sprints.id, baselineSprintId)));
        if (named) return named.velocityPoints ?? undefined;
      }
      const [first] = await closed()
        .where(and(hasVelocity, ne(sprints.id, exceptSprintId)))
        .orderBy(asc(sprints.endsOn), asc(sprints.startsOn))
        .limit(1);
      return first?.velocityPoints ?? undefined;
    },
  };
}
