/**
 * What is kept beside a sprint: drafts of plans, changes of a plan, the numbers of each sprint as they were posted, and what
 * facilitators who watch it have heard.
 */
import { sql } from 'drizzle-orm';
import { bigint, boolean, check, index, integer, jsonb, primaryKey, text } from 'drizzle-orm/pg-core';
import { PLAN_PARTS, type PlanPart } from '../../app/planning/plan-change.ts';
import type { PlanInput } from '../../app/planning/plan-input.ts';
import type { LoadSignal } from '../../forecast/pace.ts';
import { cards } from './cards.ts';
import { codedSummary, day, instant, isHalves, isNotBlank, loadline, pointsSum } from './columns.ts';
import { sprints, teams } from './teams.ts';

export const sprintResults = loadline.table(
  'sprint_results',
  {
    sprintId: text('sprint_id')
      .notNull()
      .references(() => sprints.id),
    version: integer('version').notNull(),
    recordedAt: instant('recorded_at').notNull(),
    cancelled: boolean('cancelled').notNull(),
    summary: codedSummary('summary').notNull(),
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

/** What was corrected in a plan after it was committed to. Rows are only added: see the migrations. */
export const planChanges = loadline.table(
  'plan_changes',
  {
    id: text('id').primaryKey(),
    entryOrder: bigint('entry_order', { mode: 'number' }).generatedAlwaysAsIdentity(),
    sprintId: text('sprint_id')
      .notNull()
      .references(() => sprints.id),
    /** Null for what is the sprint's own. */
    cardId: text('card_id').references(() => cards.id),
    part: text('part').$type<PlanPart>().notNull(),
    was: text('was').notNull(),
    became: text('became').notNull(),
    changedBy: text('changed_by').notNull(),
    changedAt: instant('changed_at').notNull(),
  },
  (change) => [
    index('plan_changes_of_sprint').on(change.sprintId, change.entryOrder),
    index('plan_changes_of_card').on(change.cardId),
    index('plan_changes_by').on(change.changedBy),
    check('plan_changes_ids_given', sql`${isNotBlank(change.id)} and ${isNotBlank(change.changedBy)}`),
    check(
      'plan_changes_part_known',
      sql.raw(
        `case when card_id is null then part in (${quoted(PLAN_PARTS.sprint)}) else part in (${quoted(PLAN_PARTS.card)}) end`,
      ),
    ),
  ],
);

function quoted(words: readonly string[]): string {
  return words.map((word) => `'${word}'`).join(', ');
}

/** Sprints that are watched for facilitators: what was seen last, and what they have heard. */
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
