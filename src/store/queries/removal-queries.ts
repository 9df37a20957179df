/** Reads and writes which of the bot's messages are to be deleted on the platform. */
import { randomUUID } from 'node:crypto';
import { and, asc, desc, eq, isNotNull, lte } from 'drizzle-orm';
import type { MessageRemoval, RemovalWriting } from '../../app/ports/removals.ts';
import { messageRemovals, posts } from '../schema.ts';
import type { SqlSession } from './sql-session.ts';

export async function claimedRemovals(
  session: SqlSession,
  now: Date,
  limit: number,
): Promise<MessageRemoval[]> {
  const rows = await session
    .select()
    .from(messageRemovals)
    .where(lte(messageRemovals.nextAt, now))
    .orderBy(asc(messageRemovals.nextAt), asc(messageRemovals.id))
    .limit(limit)
    .for('update', { skipLocked: true });
  return rows.map(({ nextAt: _next, createdAt: _created, ...row }) => row);
}

export function removalWriting(session: SqlSession): RemovalWriting {
  return {
    async begin({ workspaceId, userId }, at) {
      const [latest] = await session
        .select({ channelId: posts.postedChannelId })
        .from(posts)
        .where(
          and(eq(posts.workspaceId, workspaceId), eq(posts.userId, userId), isNotNull(posts.postedChannelId)),
        )
        .orderBy(desc(posts.entryOrder))
        .limit(1);
      const channelId = latest?.channelId ?? undefined;
      if (channelId === undefined) return false;
      // As the platform stamps messages: what says that it is done comes later.
      const beforeTs = (at.getTime() / 1_000).toFixed(6);
      await session
        .insert(messageRemovals)
        .values({ id: randomUUID(), workspaceId, channelId, beforeTs, nextAt: at, createdAt: at });
      return true;
    },

    async goOn({ id, beforeTs, removedCount, leftCount }, nextAt) {
      await session
        .update(messageRemovals)
        .set({ beforeTs, removedCount, leftCount, nextAt })
        .where(eq(messageRemovals.id, id));
    },

    async end(removalId) {
      await session.delete(messageRemovals).where(eq(messageRemovals.id, removalId));
    },
  };
}
