/** Remembers incoming events, which the platform may send more than once. */
import type { Transaction } from '../app/ports.ts';
import { seenEvents } from './schema.ts';
import type { SqlSession } from './sql-session.ts';

export type EventQueries = Pick<Transaction, 'rememberEvent'>;

export function eventQueries(session: SqlSession): EventQueries {
  return {
    async rememberEvent(eventId, at) {
      const inserted = await session
        .insert(seenEvents)
        .values({ eventId, seenAt: at })
        .onConflictDoNothing()
        .returning({ eventId: seenEvents.eventId });
      return inserted.length === 1;
    },
  };
}
