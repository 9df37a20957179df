/**
 * Holds rows until the transaction ends. A claim holds the sprint and its team, so that nobody answers, closes or prompts
 * at the same time; what another transaction holds is passed over and comes up again at the next tick.
 */
import { addDays } from 'date-fns/addDays';
import { and, asc, eq, isNull, lte, or, type SQL, sql } from 'drizzle-orm';
import type { PgColumn } from 'drizzle-orm/pg-core';
import type { Claims, DueSprint, DueWatch, Locks, Portion } from '../../app/ports/locks.ts';
import type { Team } from '../../app/team/team.ts';
import { taking } from '../held-locks.ts';
import { seenEvents, sprints, teams, watches } from '../schema.ts';
import { claimedSprintsOfEnded, claimedTeamsToErase } from './ended-team-queries.ts';
import { claimedPost } from './post-queries.ts';
import { claimedRemovals } from './removal-queries.ts';
import { claimedSprintsToReduce } from './retention-queries.ts';
import { isNoneOf, isServed, lockedSprintWithTeam, sprintOf } from './sprint-queries.ts';
import type { SqlSession } from './sql-session.ts';
import { teamOf } from './team-queries.ts';
import { watchOf } from './watch-queries.ts';

export function locks(session: SqlSession): Locks {
  return {
    async team(teamId) {
      // Not the full FOR UPDATE: that would also wait for, and hold up, mere references to the team.
      await taking(`team ${teamId}`, () =>
        session.select({ id: teams.id }).from(teams).where(eq(teams.id, teamId)).for('no key update'),
      );
    },

    sprintWithTeam: (sprintId) => taking(`sprint ${sprintId}`, () => lockedSprintWithTeam(session, sprintId)),

    async teamsOfPerson({ workspaceId, userId }) {
      // The clock's claims and every change of a team wait for this lock, or pass the team over.
      const ofPerson = or(
        eq(teams.productOwnerId, userId),
        sql`exists (select from loadline.members as m where m.team_id = ${teams.id} and m.user_id = ${userId})`,
      );
      await taking(`person ${workspaceId} ${userId}`, () =>
        session
          .select({ id: teams.id })
          .from(teams)
          .where(and(eq(teams.workspaceId, workspaceId), ofPerson))
          .orderBy(asc(teams.id))
          .for('no key update'),
      );
    },
  };
}

export function claims(session: SqlSession): Claims {
  async function claimDue(due: PgColumn, now: Date, { limit, except }: Portion): Promise<DueSprint[]> {
    const isDue: SQL | undefined = and(
      eq(sprints.state, 'open'),
      lte(due, now),
      isServed,
      isNoneOf(sprints.id, except),
    );
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

  async function watchesDue(now: Date, { limit, except }: Portion): Promise<DueWatch[]> {
    const rows = await session
      .select({ watch: watches, sprint: sprints, team: teams })
      .from(watches)
      .innerJoin(sprints, eq(sprints.id, watches.sprintId))
      .innerJoin(teams, eq(teams.id, sprints.teamId))
      .where(and(lte(watches.nextAt, now), eq(sprints.state, 'open'), isServed, isNoneOf(sprints.id, except)))
      .orderBy(asc(watches.nextAt), asc(watches.sprintId))
      .limit(limit)
      .for('no key update', { skipLocked: true });
    return rows.map(({ watch, sprint, team }) => ({
      watch: watchOf(watch),
      sprint: sprintOf(sprint),
      team: teamOf(team),
    }));
  }

  /** What was marked by another process meanwhile is left to it. */
  async function teamsToLookUp(
    now: Date,
    until: Date,
    limit: { readonly all: number; readonly ofWorkspace: number },
  ): Promise<Pick<Team, 'id' | 'workspaceId' | 'productOwnerId'>[]> {
    // So that not all that wait for no prompts come at midnight.
    const itsMinute = sql`abs(hashtext(${teams.id})::bigint) % 1440`;
    const minute = now.getUTCHours() * 60 + now.getUTCMinutes();
    const event = sql`concat('people ', ${teams.id}, ${` ${now.toISOString().slice(0, 10)}`}::text)`;
    const ranked = session
      .selectDistinctOn([teams.id], {
        id: teams.id,
        workspaceId: teams.workspaceId,
        productOwnerId: teams.productOwnerId,
        event: sql<string>`${event}`.as('event'),
        at: sprints.nextPromptAt,
      })
      .from(teams)
      .leftJoin(
        sprints,
        and(
          eq(teams.id, sprints.teamId),
          eq(sprints.state, 'open'),
          lte(sprints.nextPromptAt, addDays(now, 1)),
        ),
      )
      .where(
        and(
          or(
            and(isNull(sprints.nextPromptAt), sql`${itsMinute} <= ${minute}::integer`),
            lte(sprints.nextPromptAt, until),
          ),
          isServed,
          sql`not exists (select from ${seenEvents} where ${seenEvents.eventId} = ${event})`,
        ),
      )
      .orderBy(teams.id, asc(sprints.nextPromptAt))
      .as('waiting');
    const place = sql<number>`row_number() over (partition by ${ranked.workspaceId} order by ${ranked.at}, random())`;
    const waiting = await session
      .select({
        id: ranked.id,
        workspaceId: ranked.workspaceId,
        productOwnerId: ranked.productOwnerId,
        event: ranked.event,
        place,
      })
      .from(ranked)
      .orderBy(asc(place), asc(ranked.at))
      .limit(limit.all);
    const chosen = waiting.filter((team) => team.place <= limit.ofWorkspace);
    if (chosen.length === 0) return [];
    const marked = await session
      .insert(seenEvents)
      .values(chosen.map((team) => ({ eventId: team.event, seenAt: now })))
      .onConflictDoNothing()
      .returning({ event: seenEvents.eventId });
    const ours = new Set(marked.map((row) => row.event));
    return chosen
      .filter((team) => ours.has(team.event))
      .map(({ id, workspaceId, productOwnerId }) => ({
        id,
        workspaceId,
        productOwnerId: productOwnerId ?? undefined,
      }));
  }

  return {
    teamsToLookUp,
    promptsDue: (now, portion) => claimDue(sprints.nextPromptAt, now, portion),
    remindersDue: (now, portion) => claimDue(sprints.nextReminderAt, now, portion),
    lastCallsDue: (now, portion) => claimDue(sprints.lastCallAt, now, portion),
    watchesDue,
    closingsDue: (now, portion) => claimDue(sprints.closesAt, now, portion),
    post: (postId, now) => claimedPost(session, postId, now),
    sprintsToReduce: (now, portion) => claimedSprintsToReduce(session, now, portion),
    removalsDue: (now, limit) => claimedRemovals(session, now, limit),
    sprintsOfEnded: (now, portion) => claimedSprintsOfEnded(session, now, portion),
    teamsToErase: (now, portion) => claimedTeamsToErase(session, now, portion),
  };
}
