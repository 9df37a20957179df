/** Remembers incoming events, which the platform may send more than once. */
import { inArray, lt } from 'drizzle-orm';
import type { Transaction } from '../app/ports.ts';
import { seenEvents } from './schema.ts';
import type { SqlSession } from './sql-session.ts';

export type EventQueries = Pick<Transaction, 'rememberEvent'>;

/** Repeats come within minutes; a day is ample, and the table stays small. */
const REMEMBERED_HOURS = 24;

export function eventQueries(session: SqlSession): EventQueries {
  return {
    async rememberEvent(eventId, at) {
      // What another transaction is forgetting already need not be waited for.
      const old = session
        .select({ eventId: seenEvents.eventId })
        .from(seenEvents)
        .where(lt(seenEvents.seenAt, new Date(at.getTime() - REMEMBERED_HOURS * 3_600_000)))
        .limit(100)
        .for('update', { skipLocked: true });
      const [inserted] = await Promise.all([
        session
          .insert(seenEvents)
          .values({ eventId, seenAt: at })
          .onConflictDoNothing()
          .returning({ eventId: seenEvents.eventId }),
        session.delete(seenEvents).where(inArray(seenEvents.eventId, old)),
      ]);
      return inserted.length === 1;
    },
  };
}
