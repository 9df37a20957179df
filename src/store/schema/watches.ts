/** Sprints that are watched for facilitators: what was seen last, and what they have heard. */
import { sql } from 'drizzle-orm';
import { index, text } from 'drizzle-orm/pg-core';
import type { LoadSignal } from '../../forecast/pace.ts';
import { day, instant, loadline } from './columns.ts';
import { sprints } from './teams.ts';

export const watches = loadline.table(
  'watches',
  {
    sprintId: text('sprint_id')
      .primaryKey()
      .references(() => sprints.id, { onDelete: 'cascade' }),
    nextAt: instant('next_at').notNull(),
    lastAt: instant('last_at').notNull(),
    signal: text('signal').$type<LoadSignal>(),
    /** The day of the last word about the signal. */
    signalToldOn: day('signal_told_on'),
    /** Ratios above their ceilings about which a word went out. */
    ceilingsTold: text('ceilings_told').array().notNull().default(sql`'{}'::text[]`),
  },
  (watch) => [index('watches_due').on(watch.nextAt)],
);
