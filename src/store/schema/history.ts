/** What finished sprints leave behind for the statistics, and the value that product owners record. */
import { sql } from 'drizzle-orm';
import {
  bigint,
  check,
  doublePrecision,
  foreignKey,
  index,
  integer,
  jsonb,
  numeric,
  primaryKey,
  text,
} from 'drizzle-orm/pg-core';
import type { PastCard, TracePoint } from '../../app/history/past-sprint.ts';
import type { CardEvenings } from '../../forecast/card-evenings.ts';
import { codedRatios, day, instant, isHalves, isNotBlank, loadline, pointsSum } from './columns.ts';
import { sprints } from './teams.ts';

/**
 * One row a finished sprint, written when it closes (again) or is imported. It holds everything that the statistics
 * need, so that they read one row a sprint, and none of its cards' titles or answers.
 */
export const pastSprints = loadline.table(
  'past_sprints',
  {
    sprintId: text('sprint_id').primaryKey(),
    teamId: text('team_id').notNull(),
    workspaceId: text('workspace_id').notNull(),
    endsOn: day('ends_on').notNull(),
    workingDays: integer('working_days').notNull(),
    memberDays: numeric('member_days', { precision: 7, scale: 1, mode: 'number' }),
    commitmentPoints: pointsSum('commitment_points').notNull(),
    pulledInPoints: pointsSum('pulled_in_points'),
    surprisePoints: pointsSum('surprise_points'),
    velocityPoints: pointsSum('velocity_points'),
    workedPoints: pointsSum('worked_points'),
    committedFinishedPoints: pointsSum('committed_finished_points'),
    ratios: codedRatios('ratios').notNull(),
    trace: jsonb('trace').$type<readonly TracePoint[]>().notNull(),
    cards: jsonb('cards').$type<readonly PastCard[]>().notNull(),
    recordedAt: instant('recorded_at').notNull(),
    /** Null when it is not known, or no longer kept. */
    cardEvenings: jsonb('card_evenings').$type<readonly CardEvenings[]>(),
  },
  (past) => [
    foreignKey({
      name: 'past_sprints_sprint_of_team_fk',
      columns: [past.teamId, past.sprintId],
      foreignColumns: [sprints.teamId, sprints.id],
    }),
    // With the last column, for the latest few are read in this order, and thousands may have ended on one day.
    index('past_sprints_latest_of_team').on(past.teamId, past.endsOn, past.sprintId),
    index('past_sprints_latest_of_workspace').on(past.workspaceId, past.endsOn, past.sprintId),
    check('past_sprints_workspace_given', isNotBlank(past.workspaceId)),
    check('past_sprints_days_not_negative', sql`${past.workingDays} >= 0 and ${past.memberDays} >= 0`),
    check(
      'past_sprints_points_in_halves',
      sql.join(
        [
          past.commitmentPoints,
          past.pulledInPoints,
          past.surprisePoints,
          past.velocityPoints,
          past.workedPoints,
          past.committedFinishedPoints,
        ].map(isHalves),
        sql` and `,
      ),
    ),
    // `least` passes over what is null.
    check(
      'past_sprints_points_not_negative',
      sql`least(${past.commitmentPoints}, ${past.pulledInPoints}, ${past.surprisePoints}, ${past.velocityPoints},
        ${past.workedPoints}, ${past.committedFinishedPoints}) >= 0`,
    ),
    check(
      'past_sprints_committed_finished_fits',
      sql`${past.committedFinishedPoints} <= ${past.commitmentPoints}
        and ${past.committedFinishedPoints} <= ${past.velocityPoints}`,
    ),
  ],
);

/**
 * By this a process knows whether it has read a workspace's past as it is now: triggers add a row in whatever transaction
 * changes what projections read of it (see the migration 0007). The sum of a workspace's marks is another one afterwards; nobody waits for anybody, as
 * they would for a counter. Older rows are forgotten.
 */
export const pastChanges = loadline.table(
  'past_changes',
  {
    workspaceId: text('workspace_id').notNull(),
    mark: bigint('mark', { mode: 'bigint' }).notNull(),
    changedAt: instant('changed_at').notNull(),
  },
  (change) => [index('past_changes_of_workspace').on(change.workspaceId, change.changedAt, change.mark)],
);

/** The one number a sprint that the product owner records. A correction adds a version, it edits none. */
export const recordedValues = loadline.table(
  'recorded_values',
  {
    sprintId: text('sprint_id')
      .notNull()
      .references(() => sprints.id),
    version: integer('version').notNull(),
    value: doublePrecision('value').notNull(),
    recordedBy: text('recorded_by').notNull(),
    recordedAt: instant('recorded_at').notNull(),
  },
  (recorded) => [
    primaryKey({ name: 'recorded_values_pk', columns: [recorded.sprintId, recorded.version] }),
    check('recorded_values_version_from_1', sql`${recorded.version} >= 1`),
    check('recorded_values_by_given', isNotBlank(recorded.recordedBy)),
    check(
      'recorded_values_is_a_number',
      sql`${recorded.value} > '-Infinity' and ${recorded.value} < 'Infinity'`,
    ),
  ],
);
