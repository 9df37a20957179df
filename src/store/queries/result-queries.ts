/** Reads and adds the numbers of finished sprints as they were posted. Versions are added, never edited. */
import { and, asc, desc, eq, getTableColumns, type SQL, sql } from 'drizzle-orm';
import type { ResultReading, ResultWriting } from '../../app/ports/sprints.ts';
import type { SprintResult } from '../../app/team/team.ts';
import { baselineFrom, MEDIAN_SPRINTS } from '../../sprint/baseline.ts';
import { pastSprints, sprintResults, sprints } from '../schema.ts';
import { frozenSelect } from './frozen-statement.ts';
import { sprintOf } from './sprint-queries.ts';
import type { SqlSession } from './sql-session.ts';

/** Also what a process of the version before wrote, with sentences in it. */
const RESULT = {
  ...getTableColumns(sprintResults),
  summary: sql`loadline.coded_summary(${sprintResults.summary})`.mapWith(sprintResults.summary),
};

function resultOf(row: typeof sprintResults.$inferSelect): SprintResult {
  const { sprintId, version, recordedAt, cancelled, summary } = row;
  return { sprintId, version, recordedAt, cancelled, summary };
}

/** Of the sprint at hand, so that no other team's results are looked at. Imported ones have only what they left behind. */
const velocity = sql<number>`coalesce(
  (select ${sprintResults.velocityPoints} from ${sprintResults} where ${sprintResults.sprintId} = ${sprints.id}
    order by ${sprintResults.version} desc limit 1),
  ${pastSprints.velocityPoints})`;

/** Closed sprints of the team with a velocity. */
function closedSprints(which: SQL) {
  return frozenSelect(
    {
      name: sprints.name,
      endsOn: sprints.endsOn,
      velocityPoints: velocity.mapWith(Number),
      workingDays: pastSprints.workingDays,
      memberDays: pastSprints.memberDays,
    },
    sql`from ${sprints} left join ${pastSprints} on ${pastSprints.sprintId} = ${sprints.id}
      where ${sprints.teamId} = ${sql.placeholder('team')} and ${sprints.state} = 'closed' and ${velocity} > 0
        and ${which}`,
  );
}

const NAMED_BASELINE = closedSprints(sql`${sprints.id} = ${sql.placeholder('sprint')}`);
const FIRST_SPRINTS = closedSprints(
  sql`${sprints.id} <> ${sql.placeholder('except')} order by ${sprints.endsOn}, ${sprints.startsOn}
    limit ${sql.placeholder('limit')}::int`,
);

/** A sprint from before there was such a record has no working time. */
function measuredSprint<Row extends { workingDays: number | null; memberDays: number | null }>(row: Row) {
  return { ...row, workingDays: row.workingDays ?? 0, memberDays: row.memberDays ?? undefined };
}

export function resultReading(session: SqlSession): ResultReading {
  return {
    async latestResult(sprintId) {
      const [row] = await session
        .select(RESULT)
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
          result: RESULT,
        })
        .from(sprints)
        .innerJoin(sprintResults, eq(sprintResults.sprintId, sprints.id))
        .where(and(eq(sprints.teamId, teamId), eq(sprints.state, 'closed')))
        .orderBy(asc(sprints.endsOn), asc(sprints.startsOn), asc(sprints.id), desc(sprintResults.version));
      return rows.map((row) => ({ sprint: sprintOf(row.sprint), result: resultOf(row.result) }));
    },

    async baselineOf(team, exceptSprintId) {
      const { baselineSprintId } = team;
      // The named sprint is its own baseline.
      if (baselineSprintId === exceptSprintId) return undefined;
      if (baselineSprintId !== undefined) {
        const [named] = await NAMED_BASELINE(session, { team: team.id, sprint: baselineSprintId });
        if (named) return baselineFrom(measuredSprint(named));
      }
      const [first] = await FIRST_SPRINTS(session, { team: team.id, except: exceptSprintId, limit: 1 });
      return first && baselineFrom(measuredSprint(first));
    },

    async firstSprintsOf(teamId, exceptSprintId) {
      const limit = MEDIAN_SPRINTS;
      return (await FIRST_SPRINTS(session, { team: teamId, except: exceptSprintId, limit })).map(
        measuredSprint,
      );
    },
  };
}

export function resultWriting(session: SqlSession): ResultWriting {
  return {
    async insert(result) {
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
  };
}
