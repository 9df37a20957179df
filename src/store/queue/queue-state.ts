/** What waits to be delivered, for monitoring. Reads only. */
import { sql } from 'drizzle-orm';
import { isHeldBack } from '../queries/post-queries.ts';
import type { SqlSession } from '../queries/sql-session.ts';
import { posts } from '../schema.ts';
import { DELIVERY_QUEUE, GIVEN_UP_QUEUE, QUEUE_SCHEMA } from './job-sender.ts';

export interface QueueState {
  /** Deliveries that wait, those put off included. */
  readonly waitingCount: number;
  /** How long the oldest of them has been waiting, by the database's clock; 0 when none is. */
  readonly oldestSeconds: number;
  /** Deliveries set aside after they failed for the last time. */
  readonly givenUpCount: number;
  /** Posts that wait for a yes, since people of another organisation read their channel. */
  readonly heldBackCount: number;
}

/**
 * One statement over partial indexes: that of posts held back, and the queue's of jobs that have not begun (so `not blocked`, which none
 * of ours is). Those under way are left out: within a minute they end or wait again.
 */
export function queueStateQuery(session: SqlSession) {
  return session
    .select({
      waitingCount: sql<number>`(count(*) filter (where name = ${DELIVERY_QUEUE}))::integer`,
      oldestSeconds: sql<number>`coalesce(greatest(0, extract(epoch from clock_timestamp() - min(
        coalesce((data ->> 'waitingSince')::timestamptz, created_on)
      ) filter (where name = ${DELIVERY_QUEUE}))), 0)::float8`,
      givenUpCount: sql<number>`(count(*) filter (where name = ${GIVEN_UP_QUEUE}))::integer`,
      heldBackCount: sql<number>`(select count(*) from ${posts} where ${isHeldBack})::integer`,
    })
    .from(sql`${sql.identifier(QUEUE_SCHEMA)}.job`)
    .where(sql`name in (${DELIVERY_QUEUE}, ${GIVEN_UP_QUEUE}) and state < 'active' and not blocked`);
}

export async function queueState(session: SqlSession): Promise<QueueState> {
  const [row] = await queueStateQuery(session);
  return row ?? { waitingCount: 0, oldestSeconds: 0, givenUpCount: 0, heldBackCount: 0 };
}
