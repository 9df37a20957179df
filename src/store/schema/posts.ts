/**
 * Posts owed to somebody, the prompts that some of them ask, events already seen, who has looked in on the bot, and messages
 * to be taken back.
 */
import { type SQL, type SQLWrapper, sql } from 'drizzle-orm';
import { bigint, check, index, integer, jsonb, primaryKey, text, unique } from 'drizzle-orm/pg-core';
import type { AdviceQuestion } from '../../app/advice/advice.ts';
import { HELD_BACK } from '../../app/posting/delivery-failure.ts';
import { POST_KINDS } from '../../app/posting/post-kinds.ts';
import type { PostState, SubjectFields } from '../../app/posting/posts.ts';
import type { PromptState } from '../../app/team/team.ts';
import { day, instant, isNotBlank, loadline } from './columns.ts';
import { sprints, teams } from './teams.ts';

/** The column of each field of a subject. A day is the same column for every kind of post. */
export const SUBJECT_COLUMNS = {
  sprintId: 'sprintId',
  teamId: 'teamId',
  userId: 'subjectUserId',
  day: 'subjectDay',
  on: 'subjectDay',
  byUserId: 'byUserId',
  reason: 'reason',
  question: 'question',
  cardIds: 'cardIds',
} as const satisfies Readonly<Record<keyof SubjectFields, string>>;

type SubjectColumn = (typeof SUBJECT_COLUMNS)[keyof SubjectFields];

/**
 * Whether the kind is known and every column that it needs is filled. A literal of all the kinds that need a column: the
 * database reads the text of a check at each statement anew, and a branch for each kind took it longer than the rest of an
 * update.
 */
function isSubjectComplete(post: Readonly<Record<'kind' | SubjectColumn, SQLWrapper>>): SQL {
  const kinds = Object.entries(POST_KINDS).map(([kind, { fields }]) => {
    const columns: readonly SubjectColumn[] = fields.map((field) => SUBJECT_COLUMNS[field]);
    return { kind, columns };
  });
  const isOneOf = (some: typeof kinds): SQL =>
    sql`${post.kind} = any ('{${sql.raw(some.map(({ kind }) => kind).join(','))}}')`;
  const isFilled = [...new Set(Object.values(SUBJECT_COLUMNS))].map(
    (column) =>
      sql`(${post[column]} is not null or not ${isOneOf(kinds.filter(({ columns }) => columns.includes(column)))})`,
  );
  return sql.join([isOneOf(kinds), ...isFilled], sql` and `);
}

export const posts = loadline.table(
  'posts',
  {
    id: text('id').primaryKey(),
    /** Rises with every post, so that "the latest" is certain. */
    entryOrder: bigint('entry_order', { mode: 'number' }).generatedAlwaysAsIdentity(),
    workspaceId: text('workspace_id').notNull(),
    channelId: text('channel_id'),
    /** The message in whose thread it goes. */
    threadTs: text('thread_ts'),
    userId: text('user_id'),
    kind: text('kind').notNull(),
    sprintId: text('sprint_id').references(() => sprints.id),
    teamId: text('team_id').references(() => teams.id),
    subjectUserId: text('subject_user_id'),
    subjectDay: day('subject_day'),
    byUserId: text('by_user_id'),
    reason: text('reason'),
    question: jsonb('question').$type<AdviceQuestion>(),
    cardIds: jsonb('card_ids').$type<readonly string[]>(),
    state: text('state').$type<PostState>().notNull(),
    postedChannelId: text('posted_channel_id'),
    postedTs: text('posted_ts'),
    /** The message that this one was sent in place of, since that one could not be changed any more. */
    replacedChannelId: text('replaced_channel_id'),
    replacedTs: text('replaced_ts'),
    wantedVersion: integer('wanted_version').notNull(),
    sentVersion: integer('sent_version').notNull(),
    /** By the database's clock: since when the present attempt has been under way. */
    sendingSince: instant('sending_since'),
    firstAttemptAt: instant('first_attempt_at'),
    lastError: text('last_error'),
    createdAt: instant('created_at').notNull().defaultNow(),
  },
  (post) => [
    unique('posts_standing_unique').on(post.workspaceId, post.postedChannelId, post.postedTs),
    // To find what is stored of one person.
    index('posts_to_user').on(post.userId).where(sql`user_id is not null`),
    index('posts_by_user').on(post.byUserId).where(sql`by_user_id is not null`),
    index('posts_about_sprint').on(post.sprintId, post.kind, post.entryOrder),
    // Nothing that changes with a delivery is in it: else every delivery would have to change the indexes.
    index('posts_held_back')
      .on(post.workspaceId, post.channelId)
      .where(sql`last_error = '${sql.raw(HELD_BACK)}'`),
    check('posts_ids_given', sql`${isNotBlank(post.id)} and ${isNotBlank(post.workspaceId)}`),
    check('posts_one_recipient', sql`num_nonnulls(${post.channelId}, ${post.userId}) = 1`),
    check('posts_subject_complete', isSubjectComplete(post)),
    check(
      'posts_state_known',
      sql`${post.state} in ('pending', 'sending', 'uncertain', 'sent', 'skipped', 'dead')`,
    ),
    check('posts_sending_since_known', sql`(${post.state} = 'sending') = (${post.sendingSince} is not null)`),
    check('posts_standing_complete', sql`num_nonnulls(${post.postedChannelId}, ${post.postedTs}) <> 1`),
    check('posts_replaced_complete', sql`num_nonnulls(${post.replacedChannelId}, ${post.replacedTs}) <> 1`),
    check('posts_sent_stands', sql`${post.state} <> 'sent' or ${post.postedTs} is not null`),
    check(
      'posts_versions_in_order',
      sql`${post.wantedVersion} >= 1 and ${post.sentVersion} between 0 and ${post.wantedVersion}`,
    ),
  ],
);

export const prompts = loadline.table(
  'prompts',
  {
    sprintId: text('sprint_id')
      .notNull()
      .references(() => sprints.id),
    userId: text('user_id').notNull(),
    day: day('day').notNull(),
    state: text('state').$type<PromptState>().notNull(),
    /** The key to `posts` is checked at commit: a prompt is recorded before the post that asks it. */
    postId: text('post_id').references(() => posts.id),
    /** The posts that reminded of it and called last. */
    reminderPostId: text('reminder_post_id').references(() => posts.id),
    lastCallPostId: text('last_call_post_id').references(() => posts.id),
    answeredAt: instant('answered_at'),
  },
  (prompt) => [
    primaryKey({ name: 'prompts_pk', columns: [prompt.sprintId, prompt.userId, prompt.day] }),
    // A post may ask somebody about the sprints of several teams.
    index('prompts_of_post').on(prompt.postId),
    index('prompts_of_reminder').on(prompt.reminderPostId).where(sql`reminder_post_id is not null`),
    index('prompts_of_last_call').on(prompt.lastCallPostId).where(sql`last_call_post_id is not null`),
    index('prompts_of_user').on(prompt.userId),
    index('prompts_of_day').on(prompt.sprintId, prompt.day),
    check('prompts_user_given', isNotBlank(prompt.userId)),
    check('prompts_state_known', sql`${prompt.state} in ('asked', 'answered', 'unchanged', 'away')`),
    check('prompts_met_has_answered_at', sql`(${prompt.state} = 'asked') = (${prompt.answeredAt} is null)`),
  ],
);

export const seenEvents = loadline.table(
  'seen_events',
  { eventId: text('event_id').primaryKey(), seenAt: instant('seen_at').notNull() },
  (event) => [index('seen_events_by_time').on(event.seenAt)],
);

/** Who has opened the bot's home page or its messages, on a team or not. */
export const visits = loadline.table(
  'visits',
  {
    workspaceId: text('workspace_id').notNull(),
    userId: text('user_id').notNull(),
    /** When the home page was first opened: from then on it is kept up to date. */
    homeOpenedAt: instant('home_opened_at'),
    /** When the person was welcomed in the direct messages. */
    welcomedAt: instant('welcomed_at'),
  },
  (visit) => [
    primaryKey({ name: 'visits_pk', columns: [visit.workspaceId, visit.userId] }),
    check('visits_ids_given', sql`${isNotBlank(visit.workspaceId)} and ${isNotBlank(visit.userId)}`),
    check('visits_something_happened', sql`num_nonnulls(${visit.homeOpenedAt}, ${visit.welcomedAt}) > 0`),
  ],
);

/**
 * Direct messages with people who were erased, of which the bot is to take back its own part. A row goes when it is done, and says
 * nothing of whom it is about but the conversation's id, without which nothing could be done.
 */
export const messageRemovals = loadline.table(
  'message_removals',
  {
    id: text('id').primaryKey(),
    workspaceId: text('workspace_id').notNull(),
    channelId: text('channel_id').notNull(),
    /** Messages from here on stay, or have been looked at. */
    beforeTs: text('before_ts').notNull(),
    removedCount: integer('removed_count').notNull().default(0),
    /** Those that the platform doesn't let the bot delete. */
    leftCount: integer('left_count').notNull().default(0),
    nextAt: instant('next_at').notNull(),
    createdAt: instant('created_at').notNull(),
  },
  (removal) => [
    index('message_removals_due').on(removal.nextAt),
    check(
      'message_removals_given',
      sql`${isNotBlank(removal.id)} and ${isNotBlank(removal.workspaceId)} and ${isNotBlank(removal.channelId)}`,
    ),
  ],
);
