/** What may be stored twice without harm: drafts of the plan form, which requests and events have come in, and who came. */
import { and, eq, isNull, sql } from 'drizzle-orm';
import type {
  DraftReading,
  Drafts,
  EventReading,
  SeenEvents,
  VisitReading,
  Visits,
} from '../../app/ports/repeatable.ts';
import type { Actor } from '../../app/team/team.ts';
import { planDrafts, seenEvents, visits } from '../schema.ts';
import { frozenChange, frozenSelect } from './frozen-statement.ts';
import type { SqlSession } from './sql-session.ts';

function isOf(teamId: string, userId: string) {
  return and(eq(planDrafts.teamId, teamId), eq(planDrafts.userId, userId));
}

/** Keeps what somebody typed into the plan form, so that a closed form loses nothing. */
export function draftReading(session: SqlSession): DraftReading {
  return {
    async draftOf(teamId, userId) {
      const [row] = await session
        .select({ draft: planDrafts.draft })
        .from(planDrafts)
        .where(isOf(teamId, userId));
      // Drafts of before the plan asked for it do not hold it.
      return row && { ...row.draft, awayDays: row.draft.awayDays ?? '' };
    },
  };
}

export function drafts(session: SqlSession): Drafts {
  return {
    async save(teamId, userId, draft) {
      await session
        .insert(planDrafts)
        .values({ teamId, userId, draft })
        .onConflictDoUpdate({
          target: [planDrafts.teamId, planDrafts.userId],
          set: { draft: sql`excluded.draft`, savedAt: sql`excluded.saved_at` },
        });
    },

    async delete(teamId, userId) {
      await session.delete(planDrafts).where(isOf(teamId, userId));
    },
  };
}

const REMEMBER = frozenChange(
  { eventId: seenEvents.eventId },
  sql`insert into ${seenEvents} (event_id, seen_at)
    values (${sql.placeholder('event')}, ${sql.placeholder('at')}) on conflict do nothing`,
);

/**
 * By a commit that waits for no disk, which took longer than to read a status. Should the database crash before the next commit
 * that does, the event is forgotten, but then nothing came of it either: what is written later is on the disk no sooner.
 */
const REMEMBER_SOON = frozenChange(
  { eventId: seenEvents.eventId },
  sql`insert into ${seenEvents} (event_id, seen_at)
    select ${sql.placeholder('event')}::text, ${sql.placeholder('at')}::timestamptz
    where set_config('synchronous_commit', 'off', true) = 'off' on conflict do nothing`,
);

/** Remembers incoming events, which the platform may send more than once. */
export function eventReading(session: SqlSession): EventReading {
  return {
    async knowsEvent(eventId) {
      return (await session.$count(seenEvents, eq(seenEvents.eventId, eventId))) === 1;
    },
  };
}

export function eventMemory(session: SqlSession): SeenEvents {
  return {
    async remember(eventId, at) {
      const inserted = await REMEMBER(session, { event: eventId, at: at.toISOString() });
      return inserted.length === 1;
    },
  };
}

/** The same outside a transaction: one around it would wait for no disk either. */
export async function rememberAlone(session: SqlSession, eventId: string, at: Date): Promise<boolean> {
  const inserted = await REMEMBER_SOON(session, { event: eventId, at: at.toISOString() });
  return inserted.length === 1;
}

const HOME_OPENED_BY = frozenSelect(
  { userId: visits.userId },
  sql`from ${visits} where ${visits.workspaceId} = ${sql.placeholder('workspace')}
    and ${visits.userId} = any (array(select json_array_elements_text(${sql.placeholder('users')}::json)))
    and ${visits.homeOpenedAt} is not null`,
);

export function visitReading(session: SqlSession): VisitReading {
  return {
    async homeOpenedBy(workspaceId, userIds) {
      const given = { workspace: workspaceId, users: JSON.stringify(userIds) };
      const rows = await HOME_OPENED_BY(session, given);
      return rows.map(({ userId }) => userId);
    },
  };
}

export function visitMemory(session: SqlSession): Visits {
  const isOfPerson = ({ workspaceId, userId }: Actor) =>
    and(eq(visits.workspaceId, workspaceId), eq(visits.userId, userId));
  return {
    async homeOpened(actor, homeOpenedAt) {
      await session
        .insert(visits)
        .values({ workspaceId: actor.workspaceId, userId: actor.userId, homeOpenedAt })
        .onConflictDoUpdate({
          target: [visits.workspaceId, visits.userId],
          set: { homeOpenedAt },
          setWhere: isNull(visits.homeOpenedAt),
        });
    },

    async welcomed(actor, welcomedAt) {
      const rows = await session
        .insert(visits)
        .values({ workspaceId: actor.workspaceId, userId: actor.userId, welcomedAt })
        .onConflictDoUpdate({
          target: [visits.workspaceId, visits.userId],
          set: { welcomedAt },
          setWhere: isNull(visits.welcomedAt),
        })
        .returning({ userId: visits.userId });
      return rows.length === 1;
    },

    async notWelcomed(actor) {
      await session.delete(visits).where(and(isOfPerson(actor), isNull(visits.homeOpenedAt)));
      await session.update(visits).set({ welcomedAt: null }).where(isOfPerson(actor));
    },
  };
}
