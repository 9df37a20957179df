/** What teams agreed to try, with the number that it should move. */
import { sql } from 'drizzle-orm';
import { bigint, check, foreignKey, index, text } from 'drizzle-orm/pg-core';
import type { Direction, Outcome } from '../../app/experiments/experiment.ts';
import type { RatioId } from '../../sprint/sprint-ratios.ts';
import { instant, isNotBlank, loadline } from './columns.ts';
import { sprints, teams } from './teams.ts';

export const experiments = loadline.table(
  'experiments',
  {
    id: text('id').primaryKey(),
    /** Of two that began in the same moment, the first is known. */
    entryOrder: bigint('entry_order', { mode: 'number' }).generatedAlwaysAsIdentity(),
    teamId: text('team_id')
      .notNull()
      .references(() => teams.id),
    text: text('text').notNull(),
    ratio: text('ratio').$type<RatioId>().notNull(),
    direction: text('direction').$type<Direction>().notNull(),
    begunBy: text('begun_by').notNull(),
    begunAt: instant('begun_at').notNull(),
    /** The sprint that had closed last by then; null: none had. */
    afterSprintId: text('after_sprint_id'),
    outcome: text('outcome').$type<Outcome>(),
    endedBy: text('ended_by'),
    endedAt: instant('ended_at'),
  },
  (experiment) => [
    index('experiments_of_team').on(experiment.teamId, experiment.entryOrder),
    foreignKey({
      name: 'experiments_after_sprint_of_team_fk',
      columns: [experiment.teamId, experiment.afterSprintId],
      foreignColumns: [sprints.teamId, sprints.id],
    }),
    check(
      'experiments_given',
      sql`${isNotBlank(experiment.id)} and ${isNotBlank(experiment.text)} and ${isNotBlank(experiment.ratio)}
        and ${isNotBlank(experiment.begunBy)}`,
    ),
    check('experiments_direction_known', sql`${experiment.direction} in ('up', 'down')`),
    check('experiments_outcome_known', sql`${experiment.outcome} in ('keep', 'change', 'drop')`),
    check(
      'experiments_end_complete',
      sql`num_nulls(${experiment.outcome}, ${experiment.endedBy}, ${experiment.endedAt}) in (0, 3)`,
    ),
  ],
);
