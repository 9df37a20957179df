/**
 * Records posts and queues their delivery in the same transaction: a post without a job would never go
 * out, and a job without its post would be about something that never happened.
 */
import { and, desc, eq, getTableColumns, lt, notInArray, sql } from 'drizzle-orm';
import type { Transaction } from '../../app/ports/store.ts';
import type { Post, Recipient } from '../../app/posting/posts.ts';
import { waitForAll } from '../../app/wait-for-all.ts';
import type { DeliveryJob, JobSender } from '../queue/job-sender.ts';
import { DELIVERY_TIMEOUT_SECONDS } from '../queue/job-sender.ts';
import { posts } from '../schema.ts';
import { StoreError } from '../store-error.ts';
import { frozenChange, frozenSelect } from './frozen-statement.ts';
import { columnsOf, subjectOf } from './post-subject.ts';
import type { SqlSession } from './sql-session.ts';
import { statementsOf } from './sql-session.ts';

export type PostQueries = Pick<
  Transaction,
  'addPosts' | 'refreshPost' | 'countUnsentPosts' | 'postById' | 'postAbout' | 'claimPost' | 'updatePost'
>;

function recipientOf(row: typeof posts.$inferSelect): Recipient {
  return row.channelId === null ? { userId: row.userId as string } : { channelId: row.channelId };
}

function postOf(row: typeof posts.$inferSelect): Post {
  const { postedChannelId, postedTs } = row;
  return {
    id: row.id,
    workspaceId: row.workspaceId,
    recipient: recipientOf(row),
    subject: subjectOf(row),
    state: row.state,
    postedAt:
      postedChannelId === null || postedTs === null
        ? undefined
        : { channelId: postedChannelId, ts: postedTs },
    wantedVersion: row.wantedVersion,
    sentVersion: row.sentVersion,
    firstAttemptAt: row.firstAttemptAt ?? undefined,
  };
}

function noSuchPost(postId: string): StoreError {
  return new StoreError('no-such-row', `There is no post ${postId}.`, 'This is a defect: report it.');
}

const CLAIMED_POST = frozenSelect(
  getTableColumns(posts),
  sql`from ${posts} where ${posts.id} = ${sql.placeholder('post')} and (${posts.sendingSince} is null
    or ${posts.sendingSince} <= clock_timestamp() - make_interval(secs => ${sql.raw(String(DELIVERY_TIMEOUT_SECONDS))}))
  for no key update skip locked`,
);

const RAISE_WANTED_VERSION = frozenChange(
  { id: posts.id },
  sql`update ${posts} set wanted_version = wanted_version + 1 where ${posts.id} = ${sql.placeholder('post')}`,
);

export function postQueries(session: SqlSession, sender: JobSender): PostQueries {
  return {
    async addPosts(added) {
      const jobs: DeliveryJob[] = [];
      for (const rows of statementsOf(added)) {
        const returned = await session
          .insert(posts)
          .values(
            rows.map(({ id, workspaceId, recipient, subject }) => ({
              id,
              workspaceId,
              channelId: 'channelId' in recipient ? recipient.channelId : null,
              userId: 'userId' in recipient ? recipient.userId : null,
              ...columnsOf(subject),
              state: 'pending' as const,
              wantedVersion: 1,
              sentVersion: 0,
            })),
          )
          .returning({ postId: posts.id, entryOrder: posts.entryOrder });
        jobs.push(...returned);
      }
      await sender.send(session, jobs);
    },

    async refreshPost(postId) {
      const [refreshed] = await waitForAll([
        RAISE_WANTED_VERSION(session, { post: postId }),
        // Always a job of its own: one that is queued already may be read before this commits.
        sender.send(session, [{ postId }]),
      ]);
      if (refreshed.length === 0) throw noSuchPost(postId);
    },

    async countUnsentPosts() {
      return session.$count(
        posts,
        and(notInArray(posts.state, ['dead', 'skipped']), lt(posts.sentVersion, posts.wantedVersion)),
      );
    },

    async postById(postId) {
      const [row] = await session.select().from(posts).where(eq(posts.id, postId));
      return row && postOf(row);
    },

    async postAbout(sprintId, kind) {
      const [row] = await session
        .select()
        .from(posts)
        .where(and(eq(posts.sprintId, sprintId), eq(posts.kind, kind)))
        .orderBy(desc(posts.entryOrder))
        .limit(1);
      return row && postOf(row);
    },

    async claimPost(postId) {
      const [row] = await CLAIMED_POST(session, { post: postId });
      return row && postOf(row);
    },

    async updatePost(postId, change) {
      const { state, postedAt, sentVersion, firstAttemptAt, lastError } = change;
      const updated = await session
        .update(posts)
        .set({
          state,
          sendingSince: state === 'sending' ? sql`clock_timestamp()` : null,
          ...(postedAt && { postedChannelId: postedAt.channelId, postedTs: postedAt.ts }),
          // Whoever was slow and ends last knows of an older version.
          ...(sentVersion !== undefined && {
            sentVersion: sql`greatest(${posts.sentVersion}, ${sentVersion})`,
          }),
          // The earlier of two clocks: with one that was ahead, the post would be looked for in the future.
          ...(firstAttemptAt && {
            firstAttemptAt: sql`least(${firstAttemptAt.toISOString()}::timestamptz, clock_timestamp())`,
          }),
          ...(lastError !== undefined && { lastError }),
        })
        .where(eq(posts.id, postId))
        .returning({ id: posts.id });
      if (updated.length === 0) throw noSuchPost(postId);
    },
  };
}
