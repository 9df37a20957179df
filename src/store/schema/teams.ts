/** Teams, their members and their sprints: a team names its baseline sprint, so they share a module. */
import { sql } from 'drizzle-orm';
import {
  type AnyPgColumn,
  boolean,
  check,
  doublePrecision,
  foreignKey,
  index,
  integer,
  jsonb,
  primaryKey,
  smallint,
  text,
  unique,
} from 'drizzle-orm/pg-core';
import type { CarriedOver } from '../../app/team/settings.ts';
import type { BaselineRule, GoalMet, GuestStay, SprintState } from '../../app/team/team.ts';
import type { Scale } from '../../sprint/scale.ts';
import { THRESHOLD_NAMES } from '../../sprint/thresholds.ts';
import { type DaysOff, NO_DAYS_OFF, type WeekdaysBefore } from '../../sprint/work-calendar.ts';
import { day, instant, isNotBlank, isPoints, isTimeOfDay, loadline, points } from './columns.ts';

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
    closesAt: text('closing_time').notNull(),
    workingDays: smallint('working_days').array().notNull(),
    /** Days on which nobody of the team works. */
    daysOff: jsonb('days_off').$type<DaysOff>().notNull().default(NO_DAYS_OFF),
    scale: doublePrecision('scale').array().$type<Scale>().notNull(),
    keptShareAtLeast: doublePrecision('kept_share_at_least').notNull(),
    surpriseRatioAtMost: doublePrecision('surprise_ratio_at_most').notNull(),
    pullInRatioAtMost: doublePrecision('pull_in_ratio_at_most').notNull(),
    planShareAtLeast: doublePrecision('plan_share_at_least').notNull(),
    estimateAccuracyAtLeast: doublePrecision('estimate_accuracy_at_least').notNull(),
    estimateAccuracyAtMost: doublePrecision('estimate_accuracy_at_most').notNull(),
    /** Null: no mark. */
    velocityGrowthFirstMark: doublePrecision('velocity_growth_first_mark'),
    /** Null: no mark. */
    velocityGrowthLongRangeMark: doublePrecision('velocity_growth_long_range_mark'),
    productOwnerId: text('product_owner_id'),
    /** In direct messages, beside the channel. */
    ownerGetsVerdicts: boolean('owner_gets_verdicts').notNull().default(false),
    /** The channel that others share and in which a facilitator wants posts all the same. */
    sharedChannelId: text('shared_channel_id'),
    baselineSprintId: text('baseline_sprint_id'),
    /** Which sprints are compared with where none is named. */
    baselineRule: text('baseline_rule').$type<BaselineRule>().notNull().default('first'),
    /** After how many months a sprint is reduced to its totals; null: never. */
    retentionMonths: integer('retention_months'),
    weeklyLine: boolean('weekly_line').notNull().default(false),
    /** Null: never. */
    valueAfterDays: integer('value_after_days'),
    surpriseInVerdict: boolean('surprise_in_verdict').notNull().default(true),
    carriedOver: text('carried_over').$type<CarriedOver>().notNull().default('left'),
    /** When the team was ended; null while it goes on. */
    endedAt: instant('ended_at'),
    /** When that was taken back last; null: never. */
    resumedAt: instant('resumed_at'),
    /** Since when its channel is closed to the bot; null while it isn't, as far as is known. */
    channelClosedAt: instant('channel_closed_at'),
    createdAt: instant('created_at').notNull().defaultNow(),
  },
  (team) => [
    unique('teams_channel_unique').on(team.workspaceId, team.channelId),
    index('teams_by_product_owner').on(team.workspaceId, team.productOwnerId),
    index('teams_ended').on(team.endedAt).where(sql`ended_at is not null`),
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
    check('teams_closing_time_is_time', isTimeOfDay(team.closesAt)),
    check('teams_retention_in_months', sql`${team.retentionMonths} between 1 and 120`),
    check('teams_baseline_rule_known', sql`${team.baselineRule} in ('first', 'first-three')`),
    check('teams_carried_over_known', sql`${team.carriedOver} in ('left', 'new-estimate')`),
    check('teams_value_after_days', sql`${team.valueAfterDays} between 1 and 60`),
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
        THRESHOLD_NAMES.map((name) => sql`${team[name]} between 0 and 100`),
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
    isMember: boolean('is_member').notNull().default(true),
    isActive: boolean('is_active').notNull(),
    /** ISO weekdays; null: the team's. */
    worksOn: smallint('works_on').array(),
    /** The weekdays that held before these. */
    worksOnBefore: jsonb('works_on_before').$type<WeekdaysBefore[]>().notNull().default([]),
    daysOff: jsonb('days_off').$type<DaysOff>().notNull().default(NO_DAYS_OFF),
    /** When they want to be asked, by the clock of the zone; null: at the team's time. */
    promptAt: text('prompt_at'),
    promptTimeZone: text('prompt_time_zone'),
    /** When the morning digest goes to a facilitator; null: none is wanted. */
    digestAt: text('digest_at'),
    /** False for a guest of the workspace. */
    mayFacilitate: boolean('may_facilitate').notNull().default(true),
    /** In direct messages, beside the channel. */
    getsVerdicts: boolean('gets_verdicts').notNull().default(false),
    /** Null for those who were there before it was kept. */
    joinedOn: day('joined_on'),
    leftOn: day('left_on'),
    /** The sprints in which they are or were a guest. */
    guestIn: jsonb('guest_in').$type<GuestStay[]>().notNull().default([]),
  },
  (member) => [
    primaryKey({ name: 'members_pk', columns: [member.teamId, member.userId] }),
    index('members_active_user').on(member.userId).where(sql`${member.isActive}`),
    check('members_user_given', isNotBlank(member.userId)),
    check('members_digest_at_is_time', isTimeOfDay(member.digestAt)),
    check('members_prompt_at_is_time', isTimeOfDay(member.promptAt)),
    check(
      'members_own_prompt_complete',
      sql`num_nulls(${member.promptAt}, ${member.promptTimeZone}) <> 1 and ${isNotBlank(member.promptTimeZone)}`,
    ),
    check(
      'members_works_on_weekdays',
      sql`cardinality(${member.worksOn}) between 1 and 7 and ${member.worksOn} <@ '{1,2,3,4,5,6,7}'::smallint[]`,
    ),
  ],
);

export const sprints = loadline.table(
  'sprints',
  {
    id: text('id').primaryKey(),
    teamId: text('team_id')
      .notNull()
      .references((): AnyPgColumn => teams.id),
    name: text('name').notNull(),
    goal: text('goal').notNull(),
    startsOn: day('starts_on').notNull(),
    endsOn: day('ends_on').notNull(),
    /** Local time of day; `closesAt` is the instant that follows from it. */
    closingTime: text('closing_time').notNull(),
    closesAt: instant('closes_at').notNull(),
    state: text('state').$type<SprintState>().notNull(),
    closedAt: instant('closed_at'),
    reopenedAt: instant('reopened_at'),
    nextPromptAt: instant('next_prompt_at'),
    nextReminderAt: instant('next_reminder_at'),
    lastCallAt: instant('last_call_at'),
    importedAt: instant('imported_at'),
    /** Days off and away of all members together that its plan names. */
    awayDays: points('away_days').notNull().default(0),
    /** Whether the goal was met, as its product owner or a facilitator said. */
    goalMet: text('goal_met').$type<GoalMet>(),
    goalNote: text('goal_note').notNull().default(''),
    goalSaidBy: text('goal_said_by'),
    goalSaidAt: instant('goal_said_at'),
    /** When all but its totals was deleted, by the team's retention setting. */
    reducedAt: instant('reduced_at'),
    createdAt: instant('created_at').notNull().defaultNow(),
  },
  (sprint) => [
    unique('sprints_team_unique').on(sprint.teamId, sprint.id),
    index('sprints_of_team_by_end').on(sprint.teamId, sprint.endsOn),
    index('sprints_prompt_due').on(sprint.nextPromptAt).where(sql`state = 'open'`),
    index('sprints_reminder_due').on(sprint.nextReminderAt).where(sql`state = 'open'`),
    index('sprints_last_call_due').on(sprint.lastCallAt).where(sql`state = 'open'`),
    index('sprints_closing_due').on(sprint.closesAt).where(sql`state = 'open'`),
    check('sprints_id_given', isNotBlank(sprint.id)),
    check('sprints_name_given', isNotBlank(sprint.name)),
    check('sprints_away_days_in_halves', isPoints(sprint.awayDays)),
    check('sprints_end_not_before_start', sql`${sprint.endsOn} >= ${sprint.startsOn}`),
    check('sprints_closing_time_is_time', isTimeOfDay(sprint.closingTime)),
    check('sprints_state_known', sql`${sprint.state} in ('open', 'closed', 'cancelled')`),
    // A sprint that is over, and one that was reopened, was closed at some time.
    check(
      'sprints_over_has_closed_at',
      sql`${sprint.closedAt} is not null or (${sprint.state} = 'open' and ${sprint.reopenedAt} is null)`,
    ),
    index('sprints_to_reduce').on(sprint.endsOn).where(sql`reduced_at is null and state <> 'open'`),
    check('sprints_reduced_is_over', sql`${sprint.reducedAt} is null or ${sprint.state} <> 'open'`),
    check('sprints_goal_met_known', sql`${sprint.goalMet} in ('yes', 'partly', 'no')`),
    check(
      'sprints_goal_said_complete',
      sql`num_nulls(${sprint.goalMet}, ${sprint.goalSaidBy}, ${sprint.goalSaidAt}) in (0, 3)`,
    ),
    check('sprints_imported_is_closed', sql`${sprint.importedAt} is null or ${sprint.state} = 'closed'`),
  ],
);
