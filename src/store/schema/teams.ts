/** Teams and their members. */
import { sql } from 'drizzle-orm';
import {
  boolean,
  check,
  doublePrecision,
  foreignKey,
  index,
  integer,
  primaryKey,
  smallint,
  text,
  unique,
} from 'drizzle-orm/pg-core';
import { instant, isNotBlank, isTimeOfDay, loadline } from './columns.ts';
import { sprints } from './sprints.ts';

export const teams = loadline.table(
  'teams',
  {
    id: text('id').primaryKey(),
    workspaceId: text('workspace_id').notNull(),
    channelId: text('channel_id').notNull(),
    name: text('name').notNull(),
    timeZone: text('time_zone').notNull(),
    promptAt: text('prompt_at').notNull(),
    reminderAfterMinutes: integer('reminder_after_minutes').notNull(),
    closingTime: text('closing_time').notNull(),
    workingDays: smallint('working_days').array().notNull(),
    scale: doublePrecision('scale').array().notNull(),
    keptShareAtLeast: doublePrecision('kept_share_at_least').notNull(),
    surpriseRatioAtMost: doublePrecision('surprise_ratio_at_most').notNull(),
    pullInRatioAtMost: doublePrecision('pull_in_ratio_at_most').notNull(),
    planShareAtLeast: doublePrecision('plan_share_at_least').notNull(),
    estimateAccuracyAtLeast: doublePrecision('estimate_accuracy_at_least').notNull(),
    estimateAccuracyAtMost: doublePrecision('estimate_accuracy_at_most').notNull(),
    velocityGrowthFirstMark: doublePrecision('velocity_growth_first_mark').notNull(),
    velocityGrowthLongRangeMark: doublePrecision('velocity_growth_long_range_mark').notNull(),
    productOwnerId: text('product_owner_id'),
    baselineSprintId: text('baseline_sprint_id'),
    createdAt: instant('created_at').notNull().defaultNow(),
  },
  (team) => [
    unique('teams_channel_unique').on(team.workspaceId, team.channelId),
    // The baseline must be one of the team's own sprints.
    foreignKey({
      name: 'teams_baseline_sprint_fk',
      columns: [team.id, team.baselineSprintId],
      foreignColumns: [sprints.teamId, sprints.id],
    }),
    check(
      'teams_ids_given',
      sql`${isNotBlank(team.id)} and ${isNotBlank(team.workspaceId)} and ${isNotBlank(team.channelId)}`,
    ),
    check('teams_name_given', isNotBlank(team.name)),
    check('teams_time_zone_given', isNotBlank(team.timeZone)),
    check('teams_prompt_at_is_time', isTimeOfDay(team.promptAt)),
    check('teams_closing_time_is_time', isTimeOfDay(team.closingTime)),
    check('teams_reminder_within_day', sql`${team.reminderAfterMinutes} between 0 and 1440`),
    check(
      'teams_working_days_are_weekdays',
      sql`cardinality(${team.workingDays}) between 1 and 7 and ${team.workingDays} <@ '{1,2,3,4,5,6,7}'::smallint[]`,
    ),
    check(
      'teams_scale_rises',
      sql`cardinality(${team.scale}) between 1 and 30 and loadline.is_rising(${team.scale})
        and ${team.scale}[1] >= 0 and ${team.scale}[cardinality(${team.scale})] between 0.5 and 999.5`,
    ),
    check(
      'teams_thresholds_in_range',
      sql.join(
        [
          team.keptShareAtLeast,
          team.surpriseRatioAtMost,
          team.pullInRatioAtMost,
          team.planShareAtLeast,
          team.estimateAccuracyAtLeast,
          team.estimateAccuracyAtMost,
          team.velocityGrowthFirstMark,
          team.velocityGrowthLongRangeMark,
        ].map((column) => sql`${column} between 0 and 100`),
        sql` and `,
      ),
    ),
    check(
      'teams_threshold_pairs_in_order',
      sql`${team.estimateAccuracyAtLeast} <= ${team.estimateAccuracyAtMost}
        and ${team.velocityGrowthFirstMark} <= ${team.velocityGrowthLongRangeMark}`,
    ),
  ],
);

export const members = loadline.table(
  'members',
  {
    teamId: text('team_id')
      .notNull()
      .references(() => teams.id),
    userId: text('user_id').notNull(),
    name: text('name').notNull(),
    isFacilitator: boolean('is_facilitator').notNull(),
    isActive: boolean('is_active').notNull(),
  },
  (member) => [
    primaryKey({ name: 'members_pk', columns: [member.teamId, member.userId] }),
    index('members_active_user').on(member.userId).where(sql`${member.isActive}`),
    check('members_user_given', isNotBlank(member.userId)),
  ],
);
