/** Reads and writes what finished sprints leave behind for the statistics. Computes none of it. */
import { and, asc, desc, eq, getTableColumns, type SQL, sql } from 'drizzle-orm';
import type { PastSprint, PastTrace } from '../../app/history/past-sprint.ts';
import type { HistoryReading, HistoryWriting } from '../../app/ports/sprints.ts';
import { pastChanges, pastSprints, recordedValues, sprints } from '../schema.ts';
import { frozenSelect } from './frozen-statement.ts';
import { sprintOf } from './sprint-queries.ts';
import type { SqlSession } from './sql-session.ts';
import { latestWatchedSprints } from './watched-sprint-queries.ts';

/** Also what a process of the version before wrote, with sentences in it. */
const { cardEvenings: _readByThemselves, ...PAST_COLUMNS } = getTableColumns(pastSprints);
const PAST = {
  ...PAST_COLUMNS,
  ratios: sql`loadline.coded_ratios(${pastSprints.ratios})`.mapWith(pastSprints.ratios),
};

type Row = {
  readonly past: Omit<typeof pastSprints.$inferSelect, 'cardEvenings'>;
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

const SPRINTS_WITHOUT_PAST = frozenSelect(
  getTableColumns(sprints),
  sql`from ${sprints} left join ${pastSprints} on ${pastSprints.sprintId} = ${sprints.id}
    where ${pastSprints.sprintId} is null and ${sprints.id} in (
      select latest.id from ${sprints} as latest
      where latest.team_id = ${sql.placeholder('team')} and latest.state = 'closed'
      order by latest.ends_on desc limit ${sql.placeholder('most')})
    order by ${sprints.endsOn}, ${sprints.startsOn}`,
);

const traceLength = sql`jsonb_array_length(${pastSprints.trace})`;
// Rounded as in `tracePointAt`. The whole of so many traces would take longer to read than all the rest.
const traceAtShare = sql<PastTrace['trace']>`case when ${traceLength} = 0 then '[]'::jsonb
  else jsonb_build_array(${pastSprints.trace}
    -> floor(${sql.placeholder('share')}::float8 * (${traceLength} - 1) + 0.5)::integer) end`;

/** The latest, by their last days. */
function tracesOf(which: SQL) {
  const { teamId, endsOn, commitmentPoints, velocityPoints, trace } = pastSprints;
  return frozenSelect(
    { teamId, endsOn, commitmentPoints, velocityPoints, trace: traceAtShare.mapWith(trace) },
    sql`from ${pastSprints} join ${sprints} on ${sprints.id} = ${pastSprints.sprintId}
      where ${which} and ${sprints.state} = 'closed'
      order by ${endsOn} desc, ${pastSprints.sprintId} desc limit ${sql.placeholder('most')}`,
  );
}

const WATCHED_BY_OTHERS = sql`${pastSprints.workspaceId} = ${sql.placeholder('workspace')}
  and ${pastSprints.teamId} <> ${sql.placeholder('team')} and ${traceLength} > 0`;

const OWN_TRACES = tracesOf(sql`${pastSprints.teamId} = ${sql.placeholder('team')}`);
const WATCHED_TRACES_OF_OTHERS = tracesOf(WATCHED_BY_OTHERS);

const { teamId, velocityPoints, workingDays, memberDays } = pastSprints;
const TIMES_OF_OTHERS = frozenSelect(
  { teamId, velocityPoints, workingDays, memberDays },
  sql`from ${pastSprints} join ${sprints} on ${sprints.id} = ${pastSprints.sprintId}
    where ${WATCHED_BY_OTHERS} and ${sprints.state} = 'closed'
    order by ${pastSprints.endsOn} desc, ${pastSprints.sprintId} desc limit ${sql.placeholder('most')}`,
);

const PAST_VERSION = frozenSelect(
  { version: sql<string | null>`sum(${pastChanges.mark})::text` },
  sql`from ${pastChanges} where ${pastChanges.workspaceId} = ${sql.placeholder('workspace')}`,
);

export function historyReading(session: SqlSession): HistoryReading {
  return {
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
          past: PAST,
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

    async sprintsWithoutPast(teamId, amongLatest) {
      const given = { team: teamId, most: amongLatest ?? null };
      return (await SPRINTS_WITHOUT_PAST(session, given)).map(sprintOf);
    },

    async pastTracesOf({ id, workspaceId }, most, elapsedShare) {
      const share = { share: elapsedShare };
      const [own, others] = await Promise.all([
        OWN_TRACES(session, { ...share, team: id, most: most.own }),
        WATCHED_TRACES_OF_OTHERS(session, {
          ...share,
          workspace: workspaceId,
          team: id,
          most: most.others,
        }),
      ]);
      return [...own, ...others]
        .map((row) => ({ ...row, velocityPoints: row.velocityPoints ?? undefined }))
        .sort((a, b) => (a.endsOn < b.endsOn ? -1 : a.endsOn > b.endsOn ? 1 : 0));
    },

    async watchedSprintsOf(teamId, most) {
      return latestWatchedSprints(session, teamId, most);
    },

    async pastTimesOfOthers({ id, workspaceId }, most) {
      const latest = await TIMES_OF_OTHERS(session, { workspace: workspaceId, team: id, most });
      return latest.reverse().map((row) => ({
        ...row,
        velocityPoints: row.velocityPoints ?? undefined,
        memberDays: row.memberDays ?? undefined,
      }));
    },

    async pastVersion(workspaceId) {
      const [row] = await PAST_VERSION(session, { workspace: workspaceId });
      return row?.version ?? undefined;
    },
  };
}

export function historyWriting(session: SqlSession): HistoryWriting {
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
        cardEvenings: past.cardEvenings ?? null,
      };
      await session
        .insert(pastSprints)
        .values(row)
        .onConflictDoUpdate({ target: pastSprints.sprintId, set: row });
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
