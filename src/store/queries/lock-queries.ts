/**
 * Holds rows until the transaction ends. A claim holds the sprint and its team, so that nobody answers, closes or prompts
 * at the same time; what another transaction holds is passed over and comes up again at the next tick.
 */
import { and, asc, eq, lte, or, type SQL, sql } from 'drizzle-orm';
import type { PgColumn } from 'drizzle-orm/pg-core';
import type { Claims, DueSprint, Locks } from '../../app/ports/locks.ts';
import { sprints, teams } from '../schema.ts';
import { claimedPost } from './post-queries.ts';
import { claimedSprintsToReduce } from './retention-queries.ts';
import { isServed, lockedSprintWithTeam, sprintOf } from './sprint-queries.ts';
import type { SqlSession } from './sql-session.ts';
import { teamOf } from './team-queries.ts';

export function locks(session: SqlSession): Locks {
  return {
    async team(teamId) {
      // Not the full FOR UPDATE: that would also wait for, and hold up, mere references to the team.
      await session.select({ id: teams.id }).from(teams).where(eq(teams.id, teamId)).for('no key update');
    },

    sprintWithTeam: (sprintId) => lockedSprintWithTeam(session, sprintId),

    async teamsOfPerson({ workspaceId, userId }) {
      // The clock's claims and every change of a team wait for this lock, or pass the team over.
      await session
        .select({ id: teams.id })
        .from(teams)
        .where(
          and(
            eq(teams.workspaceId, workspaceId),
            or(
              eq(teams.productOwnerId, userId),
              sql`exists (select from loadline.members as m
                where m.team_id = ${teams.id} and m.user_id = ${userId})`,
            ),
          ),
        )
        .orderBy(asc(teams.id))
        .for('no key update');
    },
  };
}

export function claims(session: SqlSession): Claims {
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
    promptsDue: (now, limit) => claimDue(sprints.nextPromptAt, now, limit),
    remindersDue: (now, limit) => claimDue(sprints.nextReminderAt, now, limit),
    lastCallsDue: (now, limit) => claimDue(sprints.lastCallAt, now, limit),
    closingsDue: (now, limit) => claimDue(sprints.closesAt, now, limit),
    post: (postId) => claimedPost(session, postId),
    sprintsToReduce: (now, limit) => claimedSprintsToReduce(session, now, limit),
  };
}
