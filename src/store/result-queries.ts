/** Reads and adds the numbers of finished sprints as they were posted. Versions are added, never edited. */
import { and, asc, desc, eq, gt, ne } from 'drizzle-orm';
import type { Transaction } from '../app/ports.ts';
import type { SprintResult } from '../app/team.ts';
import { sprintResults, sprints } from './schema.ts';
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
  /** The latest result of each closed sprint, as a subquery. */
  const latestResults = session
    .selectDistinctOn([sprintResults.sprintId])
    .from(sprintResults)
    .orderBy(sprintResults.sprintId, desc(sprintResults.version))
    .as('latest_results');

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
      const closed = session
        .select({ velocityPoints: latestResults.velocityPoints })
        .from(sprints)
        .innerJoin(latestResults, eq(latestResults.sprintId, sprints.id))
        .$dynamic();
      const isClosed = and(eq(sprints.teamId, team.id), eq(sprints.state, 'closed'));
      if (baselineSprintId !== undefined) {
        const [named] = await closed.where(and(isClosed, eq(sprints.id, baselineSprintId)));
        if (named) return named.velocityPoints;
      }
      const [first] = await session
        .select({ velocityPoints: latestResults.velocityPoints })
        .from(sprints)
        .innerJoin(latestResults, eq(latestResults.sprintId, sprints.id))
        .where(and(isClosed, ne(sprints.id, exceptSprintId), gt(latestResults.velocityPoints, 0)))
        .orderBy(asc(sprints.endsOn), asc(sprints.startsOn))
        .limit(1);
      return first?.velocityPoints;
    },
  };
}
