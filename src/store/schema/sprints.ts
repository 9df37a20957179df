/** Sprints, drafts of sprints, and the numbers of each sprint as they were posted. */
import { sql } from 'drizzle-orm';
import type { AnyPgColumn } from 'drizzle-orm/pg-core';
import { boolean, check, index, integer, jsonb, primaryKey, text, unique } from 'drizzle-orm/pg-core';
import type { PlanInput } from '../../app/plan-input.ts';
import type { SprintState } from '../../app/team.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import { day, instant, isHalves, isNotBlank, isTimeOfDay, loadline, pointsSum } from './columns.ts';
import { teams } from './teams.ts';

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
    check('sprints_end_not_before_start', sql`${sprint.endsOn} >= ${sprint.startsOn}`),
    check('sprints_closing_time_is_time', isTimeOfDay(sprint.closingTime)),
    check('sprints_state_known', sql`${sprint.state} in ('open', 'closed', 'cancelled')`),
    // A sprint that is over, and one that was reopened, was closed at some time.
    check(
      'sprints_over_has_closed_at',
      sql`${sprint.closedAt} is not null or (${sprint.state} = 'open' and ${sprint.reopenedAt} is null)`,
    ),
  ],
);

export const sprintResults = loadline.table(
  'sprint_results',
  {
    sprintId: text('sprint_id')
      .notNull()
      .references(() => sprints.id),
    version: integer('version').notNull(),
    recordedAt: instant('recorded_at').notNull(),
    cancelled: boolean('cancelled').notNull(),
    summary: jsonb('summary').$type<SprintSummary>().notNull(),
    commitmentPoints: pointsSum('commitment_points').notNull(),
    pulledInPoints: pointsSum('pulled_in_points').notNull(),
    surprisePoints: pointsSum('surprise_points').notNull(),
    driftPoints: pointsSum('drift_points').notNull(),
    workedPoints: pointsSum('worked_points').notNull(),
    velocityPoints: pointsSum('velocity_points').notNull(),
    loadPoints: pointsSum('load_points').notNull(),
  },
  (result) => [
    primaryKey({ name: 'sprint_results_pk', columns: [result.sprintId, result.version] }),
    check('sprint_results_version_from_1', sql`${result.version} >= 1`),
    check(
      'sprint_results_points_in_halves',
      sql.join(
        [
          result.commitmentPoints,
          result.pulledInPoints,
          result.surprisePoints,
          result.driftPoints,
          result.workedPoints,
          result.velocityPoints,
          result.loadPoints,
        ].map(isHalves),
        sql` and `,
      ),
    ),
    check(
      'sprint_results_points_not_negative',
      sql`least(${result.commitmentPoints}, ${result.pulledInPoints}, ${result.surprisePoints},
        ${result.workedPoints}, ${result.velocityPoints}) >= 0`,
    ),
    check(
      'sprint_results_load_adds_up',
      sql`${result.loadPoints} = ${result.commitmentPoints} + ${result.pulledInPoints} + ${result.surprisePoints}`,
    ),
  ],
);

/** What somebody typed into the plan form and has not committed to yet. */
export const planDrafts = loadline.table(
  'plan_drafts',
  {
    teamId: text('team_id')
      .notNull()
      .references(() => teams.id),
    userId: text('user_id').notNull(),
    draft: jsonb('draft').$type<PlanInput>().notNull(),
    savedAt: instant('saved_at').notNull().defaultNow(),
  },
  (draft) => [
    primaryKey({ name: 'plan_drafts_pk', columns: [draft.teamId, draft.userId] }),
    check('plan_drafts_user_given', isNotBlank(draft.userId)),
  ],
);
