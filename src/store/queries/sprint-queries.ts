/** Reads and writes sprints. What state a sprint goes to, and when, is decided elsewhere. */
import { and, asc, desc, eq, getTableColumns, ne, sql } from 'drizzle-orm';
import type { SprintReading, SprintWithTeam, SprintWriting } from '../../app/ports/sprints.ts';
import type { GoalOutcome, Sprint } from '../../app/team/team.ts';
import { installations, members, planChanges, sprints, teams, watches } from '../schema.ts';
import { frozenSelect } from './frozen-statement.ts';
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

function rowOf(sprint: Sprint): Omit<typeof sprints.$inferInsert, 'createdAt'> {
  const { closesAt, closesAtInstant, goalOutcome, ...same } = sprint;
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
const teamOfSprint = sql`(select ${sprints.teamId} from ${sprints} where ${sprints.id} = ${sql.placeholder('sprint')})`;
const TEAM_OF_SPRINT = frozenSelect(
  getTableColumns(teams),
  sql`from ${teams} where ${teams.id} = ${teamOfSprint}`,
);
const LOCKED_TEAM_OF_SPRINT = frozenSelect(
  getTableColumns(teams),
  sql`from ${teams} where ${teams.id} = ${teamOfSprint} for no key update`,
);
const MEMBERS_OF_SPRINT = frozenSelect(
  getTableColumns(members),
  sql`from ${members} where ${members.teamId} = ${teamOfSprint}`,
);

const LATEST_SPANS = frozenSelect(
  { startsOn: sprints.startsOn, endsOn: sprints.endsOn },
  sql`from ${sprints} where ${sprints.id} in (
      select distinct on (latest.starts_on) latest.id from ${sprints} as latest
      where latest.team_id = ${sql.placeholder('team')} and latest.state <> 'cancelled'
      order by latest.starts_on desc, latest.created_at limit ${sql.placeholder('most')})
    order by ${sprints.startsOn} desc`,
);

const isInChannel = sql`${teams.workspaceId} = ${sql.placeholder('workspace')}
  and ${teams.channelId} = ${sql.placeholder('channel')}`;
const teamInChannel = sql`(select ${teams.id} from ${teams} where ${isInChannel})`;
const TEAM_IN_CHANNEL = frozenSelect(getTableColumns(teams), sql`from ${teams} where ${isInChannel}`);
const MEMBERS_IN_CHANNEL = frozenSelect(
  getTableColumns(members),
  sql`from ${members} where ${members.teamId} = ${teamInChannel}`,
);
const OPEN_SPRINTS_IN_CHANNEL = frozenSelect(
  getTableColumns(sprints),
  sql`from ${sprints} where ${sprints.teamId} = ${teamInChannel} and ${sprints.state} = 'open'
    order by ${sprints.startsOn}`,
);

/**
 * The clocks of a workspace that removed the bot are stopped until it is installed again, and those of a team that was ended
 * until it is taken back.
 */
export const isServed = sql`${teams.endedAt} is null and not exists (select from ${installations}
  where ${installations.workspaceId} = ${teams.workspaceId} and ${installations.revokedAt} is not null)`;

async function sprintWith(
  session: SqlSession,
  readTeam: typeof TEAM_OF_SPRINT,
  sprintId: string,
): Promise<SprintWithTeam | undefined> {
  const given = { sprint: sprintId };
  // The team first: when it is locked, the others are read under the lock.
  const [[team], [sprint], memberRows] = await Promise.all([
    readTeam(session, given),
    SPRINT(session, given),
    MEMBERS_OF_SPRINT(session, given),
  ]);
  if (!sprint || !team) return undefined;
  return { sprint: sprintOf(sprint), team: teamOf(team), members: membersOf(memberRows) };
}

export function lockedSprintWithTeam(
  session: SqlSession,
  sprintId: string,
): Promise<SprintWithTeam | undefined> {
  return sprintWith(session, LOCKED_TEAM_OF_SPRINT, sprintId);
}

export function sprintReading(session: SqlSession): SprintReading {
  return {
    async sprintById(sprintId) {
      const [row] = await SPRINT(session, { sprint: sprintId });
      return row && sprintOf(row);
    },

    sprintWithTeam: (sprintId) => sprintWith(session, TEAM_OF_SPRINT, sprintId),

    async teamInChannel(workspaceId, channelId) {
      const given = { workspace: workspaceId, channel: channelId };
      const [[team], memberRows, sprintRows] = await Promise.all([
        TEAM_IN_CHANNEL(session, given),
        MEMBERS_IN_CHANNEL(session, given),
        OPEN_SPRINTS_IN_CHANNEL(session, given),
      ]);
      return (
        team && { team: teamOf(team), members: membersOf(memberRows), openSprints: sprintRows.map(sprintOf) }
      );
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
