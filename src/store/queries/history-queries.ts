/** Reads and writes what finished sprints leave behind for the statistics. Computes none of it. */
import { getTableColumns, type SQL, sql } from 'drizzle-orm';
import {
  type PastHeading,
  type PastNumbers,
  type PastTrace,
  wholePast,
} from '../../app/history/past-sprint.ts';
import type { HistoryReading, HistoryWriting } from '../../app/ports/sprints.ts';
import { waitForAll } from '../../app/wait-for-all.ts';
import { pastSprints, recordedValues, sprints } from '../schema.ts';
import { frozenSelect } from './frozen-statement.ts';
import { pastVersion, sprintOf } from './sprint-queries.ts';
import type { SqlSession } from './sql-session.ts';
import { latestWatchedSprints } from './watched-sprint-queries.ts';

/** So many sprints are read at once; between them others have their turn. */
const NUMBERS_AT_ONCE = 100;

/** The next ones after a last day and a sprint. */
const PAST_NUMBERS = frozenSelect(
  {
    sprintId: pastSprints.sprintId,
    teamId: pastSprints.teamId,
    endsOn: pastSprints.endsOn,
    workingDays: pastSprints.workingDays,
    memberDays: pastSprints.memberDays,
    commitmentPoints: pastSprints.commitmentPoints,
    pulledInPoints: pastSprints.pulledInPoints,
    surprisePoints: pastSprints.surprisePoints,
    velocityPoints: pastSprints.velocityPoints,
    workedPoints: pastSprints.workedPoints,
    committedFinishedPoints: pastSprints.committedFinishedPoints,
    ratios: pastSprints.ratios,
    trace: pastSprints.trace,
    cards: pastSprints.cards,
  },
  sql`from ${pastSprints} where ${pastSprints.teamId} = ${sql.placeholder('team')}
    and (${pastSprints.endsOn}, ${pastSprints.sprintId}) > (${sql.placeholder('day')}::date, ${sql.placeholder('sprint')})
    order by ${pastSprints.endsOn}, ${pastSprints.sprintId} limit ${sql.raw(String(NUMBERS_AT_ONCE))}`,
);

const PAST_HEADINGS = frozenSelect(
  {
    sprintId: sprints.id,
    name: sprints.name,
    startsOn: sprints.startsOn,
    importedAt: sprints.importedAt,
    goalMet: sprints.goalMet,
    recordedValue: sql<number | null>`(select ${recordedValues.value} from ${recordedValues}
      where ${recordedValues.sprintId} = ${sprints.id} order by ${recordedValues.version} desc limit 1)`.mapWith(
      recordedValues.value,
    ),
  },
  sql`from ${sprints} where ${sprints.teamId} = ${sql.placeholder('team')} and ${sprints.state} = 'closed'
    order by ${sprints.endsOn}, ${sprints.startsOn}, ${sprints.id}`,
);

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

const PAST_VERSION = frozenSelect({ version: pastVersion }, sql``);

function numbersOf(row: Awaited<ReturnType<typeof PAST_NUMBERS>>[number]): PastNumbers {
  return {
    ...row,
    memberDays: row.memberDays ?? undefined,
    pulledInPoints: row.pulledInPoints ?? undefined,
    surprisePoints: row.surprisePoints ?? undefined,
    velocityPoints: row.velocityPoints ?? undefined,
    workedPoints: row.workedPoints ?? undefined,
    committedFinishedPoints: row.committedFinishedPoints ?? undefined,
  };
}

export function historyReading(session: SqlSession): HistoryReading {
  async function pastHeadingsOf(teamId: string): Promise<PastHeading[]> {
    const rows = await PAST_HEADINGS(session, { team: teamId });
    return rows.map((row) => ({
      ...row,
      importedAt: row.importedAt ?? undefined,
      recordedValue: row.recordedValue ?? undefined,
      goalMet: row.goalMet ?? undefined,
    }));
  }

  async function pastNumbersOf(teamId: string): Promise<PastNumbers[]> {
    const numbers: PastNumbers[] = [];
    let after = { day: '-infinity', sprint: '' };
    for (;;) {
      const rows = await PAST_NUMBERS(session, { team: teamId, ...after });
      numbers.push(...rows.map(numbersOf));
      const last = rows.at(-1);
      if (!last || rows.length < NUMBERS_AT_ONCE) return numbers;
      after = { day: last.endsOn, sprint: last.sprintId };
    }
  }

  return {
    async pastSprintsOf(teamId) {
      return wholePast(...(await waitForAll([pastHeadingsOf(teamId), pastNumbersOf(teamId)])));
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
