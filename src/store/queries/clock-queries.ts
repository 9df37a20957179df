/**
 * Claims the open sprints for which something is due. A claim holds the sprint and its team until the
 * transaction ends, so that nobody answers, closes or prompts at the same time; what another transaction
 * holds is passed over and comes up again at the next tick.
 */
import type { SQL } from 'drizzle-orm';
import { and, asc, eq, lte, sql } from 'drizzle-orm';
import type { PgColumn } from 'drizzle-orm/pg-core';
import type { DueSprint, Transaction } from '../../app/ports/store.ts';
import { installations, sprints, teams } from '../schema.ts';
import { sprintOf } from './sprint-queries.ts';
import type { SqlSession } from './sql-session.ts';
import { teamOf } from './team-queries.ts';

export type ClockQueries = Pick<
  Transaction,
  'claimPromptsDue' | 'claimRemindersDue' | 'claimLastCallsDue' | 'claimClosingsDue' | 'nextDueAt'
>;

/** The clocks of a workspace that removed the bot stand still until it is installed again. */
const isServed = sql`not exists (select from ${installations}
  where ${installations.workspaceId} = ${teams.workspaceId} and ${installations.revokedAt} is not null)`;

export function clockQueries(session: SqlSession): ClockQueries {
  async function claimDue(due: PgColumn, now: Date, limit: number): Promise<DueSprint[]> {
    const isDue: SQL | undefined = and(eq(sprints.state, 'open'), lte(due, now), isServed);
    // The lock takes both tables of the join.
    const rows = await session
      .select({ sprint: sprints, team: teams })
      .from(sprints)
      .innerJoin(teams, eq(teams.id, sprints.teamId))
      .where(isDue)
      .orderBy(asc(due), asc(sprints.id))
      .limit(limit)
      .for('no key update', { skipLocked: true });
    return rows.map((row) => ({ sprint: sprintOf(row.sprint), team: teamOf(row.team) }));
  }

  return {
    claimPromptsDue: (now, limit) => claimDue(sprints.nextPromptAt, now, limit),
    claimRemindersDue: (now, limit) => claimDue(sprints.nextReminderAt, now, limit),
    claimLastCallsDue: (now, limit) => claimDue(sprints.lastCallAt, now, limit),
    claimClosingsDue: (now, limit) => claimDue(sprints.closesAt, now, limit),

    async nextDueAt() {
      const { nextPromptAt, nextReminderAt, lastCallAt, closesAt } = sprints;
      // LEAST passes over nulls.
      const earliest = sql<Date | null>`min(least(${nextPromptAt}, ${nextReminderAt}, ${lastCallAt}, ${closesAt}))`;
      const [row] = await session
        .select({ at: earliest.mapWith(closesAt) })
        .from(sprints)
        .innerJoin(teams, eq(teams.id, sprints.teamId))
        .where(and(eq(sprints.state, 'open'), isServed));
      return row?.at ?? undefined;
    },
  };
}
