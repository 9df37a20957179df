/** Remembers incoming events, which the platform may send more than once. */
import { eq, sql } from 'drizzle-orm';
import type { EventReading, SeenEvents } from '../../app/ports/repeatable.ts';
import { seenEvents } from '../schema.ts';
import { frozenChange } from './frozen-statement.ts';
import type { SqlSession } from './sql-session.ts';

const REMEMBER = frozenChange(
  { eventId: seenEvents.eventId },
  sql`insert into ${seenEvents} (event_id, seen_at)
    values (${sql.placeholder('event')}, ${sql.placeholder('at')}) on conflict do nothing`,
);

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
