/** Reads and writes what finished sprints leave behind for the statistics. Computes none of it. */
import type { SQL } from 'drizzle-orm';
import { and, asc, desc, eq, isNull, ne, sql } from 'drizzle-orm';
import type { PastSprint, PastTrace } from '../app/history/past-sprint.ts';
import type { Transaction } from '../app/ports.ts';
import { pastSprints, recordedValues, sprints } from './schema.ts';
import { sprintOf } from './sprint-queries.ts';
import type { SqlSession } from './sql-session.ts';

export type HistoryQueries = Pick<
  Transaction,
  'savePastSprint' | 'pastSprintsOf' | 'sprintsWithoutPast' | 'pastTracesOf' | 'recordValue'
>;

type Row = {
  readonly past: typeof pastSprints.$inferSelect;
  readonly sprint: Pick<typeof sprints.$inferSelect, 'name' | 'startsOn' | 'importedAt'>;
  readonly value: number | null;
};

function pastSprintOf({ past, sprint, value }: Row): PastSprint {
  return {
    sprintId: past.sprintId,
    teamId: past.teamId,
    name: sprint.name,
    startsOn: sprint.startsOn,
    endsOn: past.endsOn,
    importedAt: sprint.importedAt ?? undefined,
    workingDays: past.workingDays,
    memberDays: past.memberDays ?? undefined,
    commitmentPoints: past.commitmentPoints,
    pulledInPoints: past.pulledInPoints ?? undefined,
    surprisePoints: past.surprisePoints ?? undefined,
    velocityPoints: past.velocityPoints ?? undefined,
    workedPoints: past.workedPoints ?? undefined,
    committedFinishedPoints: past.committedFinishedPoints ?? undefined,
    ratios: past.ratios,
    trace: past.trace,
    cards: past.cards,
    recordedValue: value ?? undefined,
  };
}

export function historyQueries(session: SqlSession): HistoryQueries {
  return {
    async savePastSprint(past) {
      const row = {
        ...past,
        memberDays: past.memberDays ?? null,
        pulledInPoints: past.pulledInPoints ?? null,
        surprisePoints: past.surprisePoints ?? null,
        velocityPoints: past.velocityPoints ?? null,
        workedPoints: past.workedPoints ?? null,
        committedFinishedPoints: past.committedFinishedPoints ?? null,
      };
      await session
        .insert(pastSprints)
        .values(row)
        .onConflictDoUpdate({ target: pastSprints.sprintId, set: row });
    },

    async pastSprintsOf(teamId) {
      const latestValues = session
        .selectDistinctOn([recordedValues.sprintId], {
          sprintId: recordedValues.sprintId,
          value: recordedValues.value,
        })
        .from(recordedValues)
        .innerJoin(sprints, eq(sprints.id, recordedValues.sprintId))
        .where(eq(sprints.teamId, teamId))
        .orderBy(recordedValues.sprintId, desc(recordedValues.version))
        .as('latest_values');
      const rows = await session
        .select({
          past: pastSprints,
          sprint: { name: sprints.name, startsOn: sprints.startsOn, importedAt: sprints.importedAt },
          value: latestValues.value,
        })
        .from(pastSprints)
        .innerJoin(sprints, eq(sprints.id, pastSprints.sprintId))
        .leftJoin(latestValues, eq(latestValues.sprintId, pastSprints.sprintId))
        .where(and(eq(pastSprints.teamId, teamId), eq(sprints.state, 'closed')))
        .orderBy(asc(pastSprints.endsOn), asc(sprints.startsOn), asc(pastSprints.sprintId));
      return rows.map(pastSprintOf);
    },

    async sprintsWithoutPast(teamId) {
      const rows = await session
        .select({ sprint: sprints })
        .from(sprints)
        .leftJoin(pastSprints, eq(pastSprints.sprintId, sprints.id))
        .where(and(eq(sprints.teamId, teamId), eq(sprints.state, 'closed'), isNull(pastSprints.sprintId)))
        .orderBy(asc(sprints.endsOn), asc(sprints.startsOn));
      return rows.map((row) => sprintOf(row.sprint));
    },

    async pastTracesOf({ id, workspaceId }, most, elapsedShare) {
      const length = sql`jsonb_array_length(${pastSprints.trace})`;
      // Rounded as in `tracePointAt`. The whole of so many traces would take longer to read than all the rest.
      const place = sql`floor(${elapsedShare}::float8 * (${length} - 1) + 0.5)::integer`;
      const trace = sql<PastTrace['trace']>`case when ${length} = 0 then '[]'::jsonb
        else jsonb_build_array(${pastSprints.trace} -> ${place}) end`;
      const latest = async (which: SQL | undefined, limit: number): Promise<PastTrace[]> => {
        const rows = await session
          .select({
            teamId: pastSprints.teamId,
            endsOn: pastSprints.endsOn,
            commitmentPoints: pastSprints.commitmentPoints,
            velocityPoints: pastSprints.velocityPoints,
            trace: trace.mapWith(pastSprints.trace),
          })
          .from(pastSprints)
          .innerJoin(sprints, eq(sprints.id, pastSprints.sprintId))
          .where(and(which, eq(sprints.state, 'closed')))
          .orderBy(desc(pastSprints.endsOn), desc(pastSprints.sprintId))
          .limit(limit);
        return rows.map((row) => ({ ...row, velocityPoints: row.velocityPoints ?? undefined }));
      };
      const watched = sql`${length} > 0`;
      const ofOthers = and(eq(pastSprints.workspaceId, workspaceId), ne(pastSprints.teamId, id), watched);
      const [own, others] = await Promise.all([
        latest(eq(pastSprints.teamId, id), most.own),
        latest(ofOthers, most.others),
      ]);
      return [...own, ...others].sort((a, b) => (a.endsOn < b.endsOn ? -1 : a.endsOn > b.endsOn ? 1 : 0));
    },

    async recordValue({ sprintId, value, byUserId, at }) {
      const next = sql<number>`(select coalesce(max(${recordedValues.version}), 0) + 1 from ${recordedValues}
        where ${recordedValues.sprintId} = ${sprintId})`;
      await session
        .insert(recordedValues)
        .values({ sprintId, version: next, value, recordedBy: byUserId, recordedAt: at });
    },
  };
}
