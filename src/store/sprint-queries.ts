/** Reads and writes sprints. What state a sprint goes to, and when, is decided elsewhere. */
import { and, asc, desc, eq, inArray, ne, sql } from 'drizzle-orm';
import type { Transaction } from '../app/ports.ts';
import type { Sprint } from '../app/team.ts';
import { members, sprints, teams } from './schema.ts';
import type { SqlSession } from './sql-session.ts';
import { StoreError } from './store-error.ts';
import { membersOf, teamOf } from './team-queries.ts';

export type SprintQueries = Pick<
  Transaction,
  | 'sprintById'
  | 'sprintWithTeam'
  | 'teamInChannel'
  | 'sprintsOf'
  | 'openSprintsOf'
  | 'latestFinishedSprint'
  | 'insertSprint'
  | 'updateSprint'
  | 'updateSprintClocks'
>;

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
  };
}

function rowOf(sprint: Sprint): Omit<typeof sprints.$inferInsert, 'createdAt'> {
  const { closesAt, closesAtInstant, ...same } = sprint;
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
  };
}

export function sprintQueries(session: SqlSession): SprintQueries {
  return {
    async sprintById(sprintId) {
      const [row] = await session.select().from(sprints).where(eq(sprints.id, sprintId));
      return row && sprintOf(row);
    },

    async sprintWithTeam(sprintId) {
      const teamOfSprint = session
        .select({ id: sprints.teamId })
        .from(sprints)
        .where(eq(sprints.id, sprintId));
      const [[row], memberRows] = await Promise.all([
        session
          .select({ sprint: sprints, team: teams })
          .from(sprints)
          .innerJoin(teams, eq(teams.id, sprints.teamId))
          .where(eq(sprints.id, sprintId)),
        session.select().from(members).where(inArray(members.teamId, teamOfSprint)),
      ]);
      return row && { sprint: sprintOf(row.sprint), team: teamOf(row.team), members: membersOf(memberRows) };
    },

    async teamInChannel(workspaceId, channelId) {
      const isMeant = and(eq(teams.workspaceId, workspaceId), eq(teams.channelId, channelId));
      const teamMeant = session.select({ id: teams.id }).from(teams).where(isMeant);
      const [[row], memberRows, sprintRows] = await Promise.all([
        session.select().from(teams).where(isMeant),
        session.select().from(members).where(inArray(members.teamId, teamMeant)),
        session
          .select()
          .from(sprints)
          .where(and(inArray(sprints.teamId, teamMeant), eq(sprints.state, 'open')))
          .orderBy(asc(sprints.startsOn)),
      ]);
      return (
        row && { team: teamOf(row), members: membersOf(memberRows), openSprints: sprintRows.map(sprintOf) }
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

    async insertSprint(sprint) {
      await session.insert(sprints).values(rowOf(sprint));
    },

    async updateSprint(sprint) {
      const { id, ...row } = rowOf(sprint);
      const updated = await session
        .update(sprints)
        .set(row)
        .where(eq(sprints.id, id))
        .returning({ id: sprints.id });
      if (updated.length === 0) {
        throw new StoreError(
          'no-such-row',
          `There is no sprint ${id} to update.`,
          'This is a defect: report it.',
        );
      }
    },

    async updateSprintClocks(changed) {
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
