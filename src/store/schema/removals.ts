/** Direct messages with people who were erased, of which the bot is to take back its own part. */
import { sql } from 'drizzle-orm';
import { check, index, integer, text } from 'drizzle-orm/pg-core';
import { instant, isNotBlank, loadline } from './columns.ts';

/** A row goes when it is done. Says nothing of whom it is about but the conversation's id, without which nothing could be done. */
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
