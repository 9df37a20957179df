/** Reads and writes which sprints are watched. */
import { eq } from 'drizzle-orm';
import type { Watch, WatchWriting } from '../../app/ports/watches.ts';
import { watches } from '../schema.ts';
import type { SqlSession } from './sql-session.ts';

export function watchOf(row: typeof watches.$inferSelect): Watch {
  return { ...row, signal: row.signal ?? undefined, signalToldOn: row.signalToldOn ?? undefined };
}

export function watchWriting(session: SqlSession): WatchWriting {
  return {
    async begin(sprintIds, now) {
      if (sprintIds.length === 0) return;
      await session
        .insert(watches)
        .values(sprintIds.map((sprintId) => ({ sprintId, nextAt: now, lastAt: now })))
        .onConflictDoUpdate({ target: watches.sprintId, set: { nextAt: now } });
    },

    async save({ sprintId, signal, signalToldOn, ceilingsTold, ...times }) {
      await session
        .update(watches)
        .set({
          ...times,
          signal: signal ?? null,
          signalToldOn: signalToldOn ?? null,
          ceilingsTold: [...ceilingsTold],
        })
        .where(eq(watches.sprintId, sprintId));
    },

    async end(sprintId) {
      await session.delete(watches).where(eq(watches.sprintId, sprintId));
    },
  };
}
