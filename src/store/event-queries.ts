/** Remembers incoming events, which the platform may send more than once. */
import { sql } from 'drizzle-orm';
import type { Transaction } from '../app/ports.ts';
import { frozenChange } from './frozen-statement.ts';
import { seenEvents } from './schema.ts';
import type { SqlSession } from './sql-session.ts';

export type EventQueries = Pick<Transaction, 'rememberEvent'>;

const REMEMBER = frozenChange(
  { eventId: seenEvents.eventId },
  sql`insert into ${seenEvents} (event_id, seen_at)
    values (${sql.placeholder('event')}, ${sql.placeholder('at')}) on conflict do nothing`,
);

export function eventQueries(session: SqlSession): EventQueries {
  return {
    async rememberEvent(eventId, at) {
      const inserted = await REMEMBER(session, { event: eventId, at: at.toISOString() });
      return inserted.length === 1;
    },
  };
}
