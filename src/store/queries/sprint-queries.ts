/** Reads and writes sprints. What state a sprint goes to, and when, is decided elsewhere. */
import { and, asc, desc, eq, getTableColumns, ne, notInArray, type SQL, sql } from 'drizzle-orm';
import type { PgColumn } from 'drizzle-orm/pg-core';
import type { SprintReading, SprintWithTeam, SprintWriting } from '../../app/ports/sprints.ts';
import type { GoalOutcome, Sprint } from '../../app/team/team.ts';
import { installations, members, pastChanges, planChanges, sprints, teams, watches } from '../schema.ts';
import { frozenJoin, frozenSelect, rowsInCell } from './frozen-statement.ts';
import type { SqlSession } from './sql-session.ts';
import { membersOf, teamOf } from './team-queries.ts';

export function sprintOf(row: typeof sprints.$inferSelect): Sprint {
  return {
    id: row.id,
    teamId: row.teamId,
    name: row.name,
    goal: row.goal,
    startsOn: row.startsOn,
    endsOn: row.endsOn,
    closesAt: row.closingTime,
    closesAtInstant: row.closesAt,
    state: row.state,
    closedAt: row.closedAt ?? undefined,
    reopenedAt: row.reopenedAt ?? undefined,
    nextPromptAt: row.nextPromptAt ?? undefined,
    nextReminderAt: row.nextReminderAt ?? undefined,
    lastCallAt: row.lastCallAt ?? undefined,
    importedAt: row.importedAt ?? undefined,
    awayDays: row.awayDays === 0 ? undefined : row.awayDays,
    plannedAt: row.createdAt,
    goalOutcome: goalOutcomeOf(row),
  };
}

function goalOutcomeOf({
  goalMet,
  goalNote,
  goalSaidBy,
  goalSaidAt,
}: typeof sprints.$inferSelect): GoalOutcome | undefined {
  if (goalMet === null || goalSaidBy === null || goalSaidAt === null) return undefined;
  return { met: goalMet, note: goalNote, saidBy: goalSaidBy, saidAt: goalSaidAt };
}

function rowOf(sprint: Sprint): typeof sprints.$inferInsert {
  const { closesAt, closesAtInstant, goalOutcome, plannedAt, ...same } = sprint;
  return {
    ...same,
    closingTime: closesAt,
    closesAt: closesAtInstant,
    closedAt: sprint.closedAt ?? null,
    reopenedAt: sprint.reopenedAt ?? null,
    nextPromptAt: sprint.nextPromptAt ?? null,
    nextReminderAt: sprint.nextReminderAt ?? null,
    lastCallAt: sprint.lastCallAt ?? null,
    importedAt: sprint.importedAt ?? null,
    awayDays: sprint.awayDays ?? 0,
    createdAt: plannedAt,
    goalMet: goalOutcome?.met ?? null,
    goalNote: goalOutcome?.note ?? '',
    goalSaidBy: goalOutcome?.saidBy ?? null,
    goalSaidAt: goalOutcome?.saidAt ?? null,
  };
}

const SPRINT = frozenSelect(
  getTableColumns(sprints),
  sql`from ${sprints} where ${sprints.id} = ${sql.placeholder('sprint')}`,
);
const ofTeam = {
  members: rowsInCell(getTableColumns(members), sql`from ${members} where ${members.teamId} = ${teams.id}`),
};
const SPRINT_WITH_TEAM = frozenJoin(
  { sprint: getTableColumns(sprints), team: getTableColumns(teams), ofTeam },
  sql`from ${sprints} inner join ${teams} on ${teams.id} = ${sprints.teamId}
    where ${sprints.id} = ${sql.placeholder('sprint')}`,
);
const LOCKED_TEAM_OF_SPRINT = frozenSelect(
  { id: teams.id },
  sql`from ${teams} where ${teams.id} = (select ${sprints.teamId} from ${sprints}
    where ${sprints.id} = ${sql.placeholder('sprint')}) for no key update`,
);

const LATEST_SPANS = frozenSelect(
  { startsOn: sprints.startsOn, endsOn: sprints.endsOn },
  sql`from ${sprints} where ${sprints.id} in (
      select distinct on (latest.starts_on) latest.id from ${sprints} as latest
      where latest.team_id = ${sql.placeholder('team')} and latest.state <> 'cancelled'
      order by latest.starts_on desc, latest.created_at limit ${sql.placeholder('most')})
    order by ${sprints.startsOn} desc`,
);

/** Of the workspace that is given; null: not known. */
export const pastVersion = sql<string | null>`(select sum(${pastChanges.mark})::text from ${pastChanges}
  where ${pastChanges.workspaceId} = ${sql.placeholder('workspace')})`;

const TEAM_IN_CHANNEL = frozenJoin(
  { team: getTableColumns(teams), sprint: getTableColumns(sprints), ofTeam: { ...ofTeam, pastVersion } },
  sql`from ${teams} left join ${sprints} on ${sprints.teamId} = ${teams.id} and ${sprints.state} = 'open'
    where ${teams.workspaceId} = ${sql.placeholder('workspace')} and ${teams.channelId} = ${sql.placeholder('channel')}
    order by ${sprints.startsOn}`,
);

/** What was passed over in a portion of work; hardly ever anything. */
export function isNoneOf(id: PgColumn, except: readonly string[] = []): SQL | undefined {
  return except.length === 0 ? undefined : notInArray(id, [...except]);
}

/**
 * The clocks of a workspace that removed the bot are stopped until it is installed again, and those of a team that was ended
 * until it is taken back.
 */
export const isServed = sql`${teams.endedAt} is null and not exists (select from ${installations}
  where ${installations.workspaceId} = ${teams.workspaceId} and ${installations.revokedAt} is not null)`;

async function sprintWithTeam(session: SqlSession, sprintId: string): Promise<SprintWithTeam | undefined> {
  const [row] = await SPRINT_WITH_TEAM(session, { sprint: sprintId });
  return (
    row && {
      sprint: sprintOf(row.sprint),
      team: teamOf(row.team),
      members: membersOf(row.ofTeam.members ?? []),
    }
  );
}

/** A statement of its own locks: the one after it sees what was committed before. */
export async function lockedSprintWithTeam(
  session: SqlSession,
  sprintId: string,
): Promise<SprintWithTeam | undefined> {
  const [, found] = await Promise.all([
    LOCKED_TEAM_OF_SPRINT(session, { sprint: sprintId }),
    sprintWithTeam(session, sprintId),
  ]);
  return found;
}

export function sprintReading(session: SqlSession): SprintReading {
  return {
    async sprintById(sprintId) {
      const [row] = await SPRINT(session, { sprint: sprintId });
      return row && sprintOf(row);
    },

    sprintWithTeam: (sprintId) => sprintWithTeam(session, sprintId),

    async teamInChannel(workspaceId, channelId) {
      const rows = await TEAM_IN_CHANNEL(session, { workspace: workspaceId, channel: channelId });
      const [first] = rows;
      if (!first) return undefined;
      return {
        team: teamOf(first.team),
        members: membersOf(first.ofTeam.members ?? []),
        pastVersion: first.ofTeam.pastVersion ?? undefined,
        // Of a team without an open sprint the sprint's columns are null.
        openSprints: rows.filter(({ sprint }) => sprint.id !== null).map(({ sprint }) => sprintOf(sprint)),
      };
    },

    async sprintsOf(teamId) {
      const rows = await session
        .select()
        .from(sprints)
        .where(eq(sprints.teamId, teamId))
        .orderBy(asc(sprints.startsOn), asc(sprints.createdAt));
      return rows.map(sprintOf);
    },

    latestSpans: (teamId, most) => LATEST_SPANS(session, { team: teamId, most }),

    async openSprintsOf(teamId) {
      const rows = await session
        .select()
        .from(sprints)
        .where(and(eq(sprints.teamId, teamId), eq(sprints.state, 'open')))
        .orderBy(asc(sprints.startsOn));
      return rows.map(sprintOf);
    },

    async latestFinishedSprint(teamId) {
      const [row] = await session
        .select()
        .from(sprints)
        .where(and(eq(sprints.teamId, teamId), ne(sprints.state, 'open')))
        .orderBy(desc(sprints.endsOn), desc(sprints.closedAt))
        .limit(1);
      return row && sprintOf(row);
    },

    async planChangesOf(sprintId) {
      const rows = await session
        .select()
        .from(planChanges)
        .where(eq(planChanges.sprintId, sprintId))
        .orderBy(asc(planChanges.entryOrder));
      return rows.map(({ entryOrder: _, cardId, ...row }) => ({ ...row, cardId: cardId ?? undefined }));
    },

    async nextDueAt() {
      const { nextPromptAt, nextReminderAt, lastCallAt, closesAt } = sprints;
      // LEAST passes over nulls.
      const earliest = sql<Date | null>`min(least(${nextPromptAt}, ${nextReminderAt}, ${lastCallAt}, ${closesAt}, ${watches.nextAt}))`;
      const [row] = await session
        .select({ at: earliest.mapWith(closesAt) })
        .from(sprints)
        .innerJoin(teams, eq(teams.id, sprints.teamId))
        .leftJoin(watches, eq(watches.sprintId, sprints.id))
        .where(and(eq(sprints.state, 'open'), isServed));
      return row?.at ?? undefined;
    },
  };
}

export function sprintWriting(session: SqlSession): SprintWriting {
  return {
    async insert(sprint) {
      await session.insert(sprints).values(rowOf(sprint));
    },

    async update(sprint) {
      const { id, ...row } = rowOf(sprint);
      const updated = await session
        .update(sprints)
        .set(row)
        .where(eq(sprints.id, id))
        .returning({ id: sprints.id });
      if (updated.length === 0) throw new RangeError(`There is no sprint ${id} to update.`);
    },

    async recordPlanChanges(changes) {
      if (changes.length > 0) await session.insert(planChanges).values([...changes]);
    },

    async updateClocks(changed) {
      if (changed.length === 0) return;
      // One parameter, however many sprints there are.
      const rows = JSON.stringify(
        changed.map(({ id, nextPromptAt, nextReminderAt, lastCallAt }) => ({
          id,
          next_prompt_at: nextPromptAt,
          next_reminder_at: nextReminderAt,
          last_call_at: lastCallAt,
        })),
      );
      await session
        .update(sprints)
        .set({
          nextPromptAt: sql`changed.next_prompt_at`,
          nextReminderAt: sql`changed.next_reminder_at`,
          lastCallAt: sql`changed.last_call_at`,
        })
        .from(
          sql`jsonb_to_recordset(${rows}::jsonb) as changed(id text, next_prompt_at timestamptz,
            next_reminder_at timestamptz, last_call_at timestamptz)`,
        )
        .where(sql`${sprints.id} = changed.id`);
    },
  };
}
