/**
 * Records posts and queues their delivery in the same transaction: a post without a job would never go
 * out, and a job without its post would be about something that never happened.
 */
import {
  and,
  desc,
  eq,
  getTableColumns,
  inArray,
  isNotNull,
  isNull,
  lt,
  not,
  notInArray,
  or,
  sql,
} from 'drizzle-orm';
import { alias } from 'drizzle-orm/pg-core';
import type { PostReading, PostWriting } from '../../app/ports/posts.ts';
import { HELD_BACK } from '../../app/posting/delivery-failure.ts';
import { POST_KINDS, type PostKind } from '../../app/posting/post-kinds.ts';
import type { Post, PostedAt, PostSubject, Recipient, SubjectFields } from '../../app/posting/posts.ts';
import { waitForAll } from '../../app/wait-for-all.ts';
import { DELIVERY_TIMEOUT_SECONDS, type JobSender } from '../queue/job-sender.ts';
import { SUBJECT_COLUMNS } from '../schema/posts.ts';
import { posts, prompts, sprints } from '../schema.ts';
import { frozenChange } from './frozen-statement.ts';
import { rowsAsJson, type SqlSession, statementsOf } from './sql-session.ts';

function recipientOf(row: typeof posts.$inferSelect): Recipient {
  const place = row.channelId === null ? { userId: row.userId as string } : { channelId: row.channelId };
  return row.threadTs === null ? place : { ...place, threadTs: row.threadTs };
}

function postOf(row: typeof posts.$inferSelect): Post {
  return {
    id: row.id,
    workspaceId: row.workspaceId,
    recipient: recipientOf(row),
    subject: subjectOf(row),
    state: row.state,
    postedAt: placeOf(row.postedChannelId, row.postedTs),
    replaces: placeOf(row.replacedChannelId, row.replacedTs),
    wantedVersion: row.wantedVersion,
    sentVersion: row.sentVersion,
    firstAttemptAt: row.firstAttemptAt ?? undefined,
  };
}

function placeOf(channelId: string | null, ts: string | null): PostedAt | undefined {
  return channelId === null || ts === null ? undefined : { channelId, ts };
}

function noSuchPost(postId: string): RangeError {
  return new RangeError(`There is no post ${postId}.`);
}

/** A post as it was when it was claimed. */
const found = alias(posts, 'found');

/**
 * Nobody is asked before they have read what they are asked for. Tries to tell them end within the hour, and must not hold up
 * the prompts of those who can't be told. Of two clocks the earlier counts: with one that was ahead, the post would be looked
 * for in the future.
 */
const CLAIMED_POST = frozenChange(
  getTableColumns(found),
  sql`with found as (select * from ${posts} where ${posts.id} = ${sql.placeholder('post')}
      and ${posts.state} not in ('dead', 'skipped') and ${posts.sentVersion} < ${posts.wantedVersion}
      and (${posts.sendingSince} is null
        or ${posts.sendingSince} <= clock_timestamp() - make_interval(secs => ${sql.raw(String(DELIVERY_TIMEOUT_SECONDS))}))
      and not (${posts.kind} = 'daily-prompt' and exists (select from ${posts} told
        where told.user_id = ${posts.userId} and told.workspace_id = ${posts.workspaceId}
          and told.kind in ('role-given', 'guest-welcome') and told.sent_version = 0
          and told.state in ('pending', 'sending', 'uncertain')
          and told.created_at > clock_timestamp() - interval '1 hour'))
    for no key update skip locked)
  update ${posts} set state = 'sending', sending_since = clock_timestamp(),
    first_attempt_at = least(coalesce(found.first_attempt_at, ${sql.placeholder('now')}), clock_timestamp())
  from found where ${posts.id} = found.id`,
);

/** What is known of a post from the beginning. */
const GIVEN_COLUMNS = [
  ...[posts.id, posts.workspaceId, posts.channelId, posts.threadTs, posts.userId, posts.kind],
  ...[...new Set(Object.values(SUBJECT_COLUMNS))].map((name) => posts[name]),
];
const givenColumns = sql.join(
  GIVEN_COLUMNS.map(({ name }) => sql.identifier(name)),
  sql`, `,
);
const ADD = frozenChange(
  { postId: posts.id, entryOrder: posts.entryOrder },
  sql`insert into ${posts} (${givenColumns}, state, wanted_version, sent_version)
    select ${givenColumns}, 'pending', 1, 0
    from json_populate_recordset(null::${posts}, ${sql.placeholder('added')}::json)`,
);

const given = (name: string) => sql`${sql.placeholder(name)}::text`;
const isReplaced = sql`${given('replacedTs')} is not null`;

/**
 * What is not given stays as it is, but for the place of a message that is replaced, which is sent by a first attempt of its
 * own. A slow delivery that ends last knows an older version.
 */
const UPDATE = frozenChange(
  { id: posts.id },
  sql`update ${posts} set state = ${given('state')}, sending_since = null,
      posted_channel_id = case when not ${isReplaced} then coalesce(${given('channel')}, posted_channel_id) end,
      posted_ts = case when not ${isReplaced} then coalesce(${given('ts')}, posted_ts) end,
      replaced_channel_id = coalesce(${given('replacedChannel')}, replaced_channel_id),
      replaced_ts = coalesce(${given('replacedTs')}, replaced_ts),
      sent_version = greatest(sent_version, ${sql.placeholder('sentVersion')}::integer),
      first_attempt_at = case when not ${isReplaced} then first_attempt_at end,
      last_error = coalesce(${given('lastError')}, last_error)
    where ${posts.id} = ${sql.placeholder('post')}`,
);

/** What follows says of which posts. */
export const raiseWantedVersion = sql`update ${posts} set wanted_version = wanted_version + 1, state = case when state = 'dead'
    then case when posted_ts is not null then 'sent' when first_attempt_at is null then 'pending' else 'uncertain' end
    else state end`;

const RAISE_WANTED_VERSION = frozenChange(
  { id: posts.id },
  sql`${raiseWantedVersion} where ${posts.id} = ${sql.placeholder('post')}`,
);

const RAISE_WANTED_VERSION_ABOUT_DAY = frozenChange(
  { id: posts.id },
  sql`${raiseWantedVersion} where ${posts.id} in (
    select unnest(array[${prompts.postId}, ${prompts.reminderPostId}, ${prompts.lastCallPostId}]) from ${prompts}
    where ${prompts.sprintId} = ${sql.placeholder('sprint')} and ${prompts.day} = ${sql.placeholder('day')}
      and ${prompts.userId} in (select json_array_elements_text(${sql.placeholder('users')}::json)))`,
);

export async function claimedPost(session: SqlSession, postId: string, now: Date): Promise<Post | undefined> {
  const [row] = await CLAIMED_POST(session, { post: postId, now: now.toISOString() });
  return row && postOf(row);
}

/** As in the index of these posts. */
const hasHeldBackCode = sql`${posts.lastError} = ${sql.raw(`'${HELD_BACK}'`)}`;

/** One that waits since others read its channel too. */
export const isHeldBack = sql`${hasHeldBackCode}
  and ${posts.sentVersion} < ${posts.wantedVersion} and ${posts.state} not in ('dead', 'skipped')`;

export function postReading(session: SqlSession): PostReading {
  const about = (sprintId: string, kind: string) =>
    session
      .select()
      .from(posts)
      .where(and(eq(posts.sprintId, sprintId), eq(posts.kind, kind)))
      .orderBy(desc(posts.entryOrder));

  return {
    async countUnsentPosts() {
      return session.$count(
        posts,
        and(notInArray(posts.state, ['dead', 'skipped']), lt(posts.sentVersion, posts.wantedVersion)),
      );
    },

    async countHeldBack(workspaceId, channelId) {
      return session.$count(
        posts,
        and(isHeldBack, eq(posts.workspaceId, workspaceId), eq(posts.channelId, channelId)),
      );
    },

    async postById(postId) {
      const [row] = await session.select().from(posts).where(eq(posts.id, postId));
      return row && postOf(row);
    },

    async postAbout(sprintId, kind) {
      const [row] = await about(sprintId, kind).limit(1);
      return row && postOf(row);
    },

    async postsAbout(sprintId, kind) {
      return (await about(sprintId, kind)).map(postOf);
    },
  };
}

export function postWriting(session: SqlSession, sender: JobSender): PostWriting {
  async function refresh(postId: string): Promise<void> {
    const [refreshed] = await waitForAll([
      RAISE_WANTED_VERSION(session, { post: postId }),
      // Always a job of its own: one that is queued already may be read before this commits.
      sender.send(session, [{ postId }]),
    ]);
    if (refreshed.length === 0) throw noSuchPost(postId);
  }

  return {
    async add(added) {
      if (added.length === 0) return;
      const rows = added.map(({ id, workspaceId, recipient, subject }) => ({
        ...{ id, workspace_id: workspaceId, thread_ts: recipient.threadTs },
        ...('channelId' in recipient ? { channel_id: recipient.channelId } : { user_id: recipient.userId }),
        ...namedAsColumns(columnsOf(subject)),
      }));
      const jobs = await ADD(session, { added: rowsAsJson(rows) });
      await sender.send(session, jobs);
    },

    async refreshAboutDay(sprintId, userIds, day) {
      if (userIds.length === 0) return 0;
      const given = { sprint: sprintId, day, users: JSON.stringify(userIds) };
      const refreshed = await RAISE_WANTED_VERSION_ABOUT_DAY(session, given);
      await sender.send(
        session,
        refreshed.map(({ id }) => ({ postId: id })),
      );
      return refreshed.length;
    },

    async refreshSent(sprintId, kind) {
      const isSent = and(eq(posts.sprintId, sprintId), eq(posts.kind, kind), isNotNull(posts.postedTs));
      for (const { id } of await session.select({ id: posts.id }).from(posts).where(isSent))
        await refresh(id);
    },

    refresh,

    async update(postId, change) {
      const { state, postedAt, replaces, sentVersion, lastError } = change;
      const [updated] = await UPDATE(session, {
        ...{ post: postId, state, sentVersion: sentVersion ?? null, lastError: lastError ?? null },
        ...{ channel: postedAt?.channelId ?? null, ts: postedAt?.ts ?? null },
        ...{ replacedChannel: replaces?.channelId ?? null, replacedTs: replaces?.ts ?? null },
      });
      if (!updated) throw noSuchPost(postId);
    },

    async skipUnsentTo(teamId, userIds) {
      if (userIds.length === 0) return;
      const ofTeam = session.select({ id: sprints.id }).from(sprints).where(eq(sprints.teamId, teamId));
      const isAboutOtherTeam = sql`exists (select from ${prompts}
        where ${posts.id} in (${prompts.postId}, ${prompts.reminderPostId}, ${prompts.lastCallPostId})
          and ${prompts.sprintId} not in ${ofTeam})`;
      await session
        .update(posts)
        .set({ state: 'skipped' })
        .where(
          and(
            inArray(posts.userId, [...userIds]),
            or(inArray(posts.sprintId, ofTeam), eq(posts.teamId, teamId)),
            eq(posts.state, 'pending'),
            eq(posts.sentVersion, 0),
            not(isAboutOtherTeam),
          ),
        );
    },

    async moveChannel(workspaceId, channelId, newChannelId) {
      for (const name of ['channelId', 'postedChannelId', 'replacedChannelId'] as const) {
        await session
          .update(posts)
          .set({ [name]: newChannelId })
          .where(and(eq(posts.workspaceId, workspaceId), eq(posts[name], channelId)));
      }
    },

    async redirect(workspaceId, channelId, newChannelId) {
      const isSure = notInArray(posts.state, ['sending', 'uncertain']);
      await session
        .update(posts)
        .set({ channelId: newChannelId })
        .where(
          and(
            eq(posts.workspaceId, workspaceId),
            eq(posts.channelId, channelId),
            isSure,
            // The message above a thread stays where it is.
            isNull(posts.threadTs),
          ),
        );
    },

    async queueAllOf(workspaceId, channelId) {
      const isThere = and(
        eq(posts.workspaceId, workspaceId),
        channelId === undefined ? undefined : eq(posts.channelId, channelId),
      );
      // What waited for a yes waits no more; where it still has to, its delivery finds that out.
      await session.update(posts).set({ lastError: null }).where(and(isThere, hasHeldBackCode));
      const owed = await session
        .select({ postId: posts.id, entryOrder: posts.entryOrder })
        .from(posts)
        .where(
          and(
            isThere,
            lt(posts.sentVersion, posts.wantedVersion),
            notInArray(posts.state, ['dead', 'skipped']),
          ),
        )
        .orderBy(sql`${posts.entryOrder}`);
      for (const jobs of statementsOf(owed)) await sender.send(session, jobs);
      return owed.length;
    },
  };
}

type Row = typeof posts.$inferSelect;

/** What a post is about, between the typed value of the use cases and the columns of the table. */
type SubjectColumns = Pick<Row, 'kind' | (typeof SUBJECT_COLUMNS)[keyof SubjectFields]>;

const NO_SUBJECT = Object.fromEntries(Object.values(SUBJECT_COLUMNS).map((column) => [column, null]));

function namedAsColumns(columns: SubjectColumns): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(columns).map(([name, value]) => [posts[name as keyof SubjectColumns].name, value]),
  );
}

/** Columns that do not belong to the kind are null. */
function columnsOf(subject: PostSubject): SubjectColumns {
  const { kind, ...fields } = subject;
  const filled = Object.entries(fields).map(([name, value]) => [
    SUBJECT_COLUMNS[name as keyof SubjectFields],
    value,
  ]);
  return { kind, ...NO_SUBJECT, ...Object.fromEntries(filled) } as SubjectColumns;
}

/** The check constraint `posts_subject_complete` promises that what the kind needs is there. */
function subjectOf(row: SubjectColumns): PostSubject {
  const fields: readonly (keyof SubjectFields)[] = POST_KINDS[row.kind as PostKind].fields;
  const filled = fields.map((name) => [name, row[SUBJECT_COLUMNS[name]]]);
  return { kind: row.kind, ...Object.fromEntries(filled) } as PostSubject;
}
