/** Bodies of work that teams keep by name, and the dates that were told of them. */
import { sql } from 'drizzle-orm';
import { check, index, integer, numeric, primaryKey, text } from 'drizzle-orm/pg-core';
import { day, instant, isHalves, isNotBlank, loadline, pointsSum } from './columns.ts';
import { teams } from './teams.ts';

export const bodiesOfWork = loadline.table(
  'bodies_of_work',
  {
    id: text('id').primaryKey(),
    teamId: text('team_id')
      .notNull()
      .references(() => teams.id),
    name: text('name').notNull(),
    /** In the order in which the team's are worked on. */
    place: integer('place').notNull(),
    leftPoints: pointsSum('left_points').notNull(),
    /** Null: as much as measured. */
    growthPoints: pointsSum('growth_points'),
    growthMostPoints: pointsSum('growth_most_points'),
    /** Null: it waits for its turn. */
    sharePercent: numeric('share_percent', { precision: 4, scale: 1, mode: 'number' }),
    keptAt: instant('kept_at').notNull(),
    saidAt: instant('said_at').notNull(),
    doneAt: instant('done_at'),
  },
  (body) => [
    index('bodies_of_work_of_team').on(body.teamId, body.place),
    check('bodies_of_work_given', sql`${isNotBlank(body.id)} and ${isNotBlank(body.name)}`),
    check(
      'bodies_of_work_points',
      sql`${body.leftPoints} > 0 and ${isHalves(body.leftPoints)} and ${body.growthPoints} >= 0
        and ${isHalves(body.growthPoints)} and ${body.growthMostPoints} >= ${body.growthPoints}
        and ${isHalves(body.growthMostPoints)}`,
    ),
    check('bodies_of_work_growth', sql`${body.growthMostPoints} is null or ${body.growthPoints} is not null`),
    check('bodies_of_work_share', sql`${body.sharePercent} >= 1 and ${body.sharePercent} < 100`),
  ],
);

export const toldDates = loadline.table(
  'told_dates',
  {
    bodyId: text('body_id')
      .notNull()
      .references(() => bodiesOfWork.id, { onDelete: 'cascade' }),
    toldOn: day('told_on').notNull(),
    leftPoints: pointsSum('left_points').notNull(),
    sprintsSinceSaid: integer('sprints_since_said').notNull(),
    /** Null, as of the two that follow: there was none within reach. */
    optimisticOn: day('optimistic_on'),
    likelyOn: day('likely_on'),
    pessimisticOn: day('pessimistic_on'),
  },
  (told) => [
    primaryKey({ columns: [told.bodyId, told.toldOn] }),
    check('told_dates_points', sql`${told.leftPoints} > 0 and ${told.sprintsSinceSaid} >= 0`),
    check(
      'told_dates_in_order',
      sql`${told.optimisticOn} <= ${told.likelyOn} and ${told.likelyOn} <= ${told.pessimisticOn}`,
    ),
    check(
      'told_dates_reached_in_order',
      sql`(${told.likelyOn} is null or ${told.optimisticOn} is not null)
        and (${told.pessimisticOn} is null or ${told.likelyOn} is not null)`,
    ),
  ],
);
