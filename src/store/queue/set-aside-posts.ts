/**
 * Posts that are no longer tried: the platform refused them for good, or they failed too often. The operator fixes the
 * cause and sends them again, or drops them. The list holds nothing that people wrote.
 */
import { sql } from 'drizzle-orm';
import type { Database } from '../database.ts';
import type { SqlSession } from '../queries/sql-session.ts';
import { openQueue } from './delivery-queue.ts';
import { GIVEN_UP_QUEUE, QUEUE_SCHEMA } from './job-sender.ts';

export interface SetAsidePost {
  readonly id: string;
  readonly kind: string;
  readonly workspaceId: string;
  /** A channel; undefined when it goes to a person. */
  readonly channelId: string | undefined;
  /** `refused` by the platform, or `failed` too often. */
  readonly reason: 'refused' | 'failed';
  /** The platform's code of the last failure. */
  readonly lastError: string | undefined;
}

const givenUpIds = sql`select data ->> 'postId' from ${sql.identifier(QUEUE_SCHEMA)}.job
  where name = ${GIVEN_UP_QUEUE} and state < 'active'`;

/** Oldest first. */
export async function setAsidePosts(session: SqlSession): Promise<SetAsidePost[]> {
  const rows = await session
    .select({
      id: sql<string>`id`,
      kind: sql<string>`kind`,
      workspaceId: sql<string>`workspace_id`,
      channelId: sql<string | null>`channel_id`,
      state: sql<string>`state`,
      lastError: sql<string | null>`last_error`,
    })
    .from(sql`loadline.posts`)
    .where(
      sql`sent_version < wanted_version and (state = 'dead' or state <> 'skipped' and id in (${givenUpIds}))`,
    )
    .orderBy(sql`entry_order`);
  return rows.map(({ state, channelId, lastError, ...row }) => ({
    ...row,
    channelId: channelId ?? undefined,
    reason: state === 'dead' ? 'refused' : 'failed',
    lastError: lastError ?? undefined,
  }));
}

/**
 * Queues them again with all their attempts. One that was tried before may be posted already, so that is checked first.
 *
 * @returns how many of the ids were set aside
 */
export async function sendAgain(database: Database, ids: readonly string[]): Promise<number> {
  const { session } = database;
  const wanted = await among(session, ids);
  const queue = await openQueue(database);
  try {
    for (const id of wanted) {
      await session.execute(sql`update loadline.posts set state =
        case when posted_ts is not null then 'sent' when first_attempt_at is null then 'pending' else 'uncertain' end
        where id = ${id}`);
      await queue.queueAgain(id);
    }
  } finally {
    await queue.stop({ graceful: true });
  }
  return wanted.length;
}

/** Gives them up for good. @returns how many of the ids were set aside */
export async function giveUp(database: Database, ids: readonly string[]): Promise<number> {
  const { session } = database;
  const wanted = await among(session, ids);
  for (const id of wanted) {
    await session.transaction(async (tx) => {
      await tx.execute(
        sql`update loadline.posts set state = 'skipped', sending_since = null where id = ${id}`,
      );
      await tx.execute(sql`delete from ${sql.identifier(QUEUE_SCHEMA)}.job
        where name = ${GIVEN_UP_QUEUE} and data ->> 'postId' = ${id}`);
    });
  }
  return wanted.length;
}

/** Those of the ids whose posts are set aside; `all` means every one. */
async function among(session: SqlSession, ids: readonly string[]): Promise<string[]> {
  const known = (await setAsidePosts(session)).map(({ id }) => id);
  return ids.includes('all') ? known : known.filter((id) => ids.includes(id));
}
