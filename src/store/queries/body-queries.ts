/** Reads and writes bodies of work and the dates that were told of them. */
import { asc, eq, sql } from 'drizzle-orm';
import type { BodyOfWork, ToldDates } from '../../app/bodies/body-of-work.ts';
import type { BodyReading, BodyWriting } from '../../app/ports/bodies.ts';
import { bodiesOfWork, toldDates } from '../schema.ts';
import type { SqlSession } from './sql-session.ts';

function bodyOf(row: typeof bodiesOfWork.$inferSelect): BodyOfWork {
  return {
    ...row,
    growthPoints: row.growthPoints ?? undefined,
    growthMostPoints: row.growthMostPoints ?? undefined,
    sharePercent: row.sharePercent ?? undefined,
    doneAt: row.doneAt ?? undefined,
  };
}

function toldOf(row: typeof toldDates.$inferSelect): ToldDates {
  return {
    ...row,
    optimisticOn: row.optimisticOn ?? undefined,
    likelyOn: row.likelyOn ?? undefined,
    pessimisticOn: row.pessimisticOn ?? undefined,
  };
}

export function bodyReading(session: SqlSession): BodyReading {
  return {
    async bodiesOf(teamId) {
      const rows = await session
        .select()
        .from(bodiesOfWork)
        .where(eq(bodiesOfWork.teamId, teamId))
        .orderBy(asc(bodiesOfWork.place), asc(bodiesOfWork.keptAt), asc(bodiesOfWork.id));
      return rows.map(bodyOf);
    },

    async toldDatesOf(teamId) {
      const rows = await session
        .select({ told: toldDates })
        .from(toldDates)
        .innerJoin(bodiesOfWork, eq(bodiesOfWork.id, toldDates.bodyId))
        .where(eq(bodiesOfWork.teamId, teamId))
        .orderBy(asc(toldDates.toldOn), asc(toldDates.bodyId));
      return rows.map(({ told }) => toldOf(told));
    },

    async teamIdOfBody(bodyId) {
      const [row] = await session
        .select({ teamId: bodiesOfWork.teamId })
        .from(bodiesOfWork)
        .where(eq(bodiesOfWork.id, bodyId));
      return row?.teamId;
    },
  };
}

export function bodyWriting(session: SqlSession): BodyWriting {
  return {
    async save(body) {
      const { id, teamId, keptAt, ...rest } = body;
      const changed = {
        ...rest,
        growthPoints: body.growthPoints ?? null,
        growthMostPoints: body.growthMostPoints ?? null,
        sharePercent: body.sharePercent ?? null,
        doneAt: body.doneAt ?? null,
      };
      await session
        .insert(bodiesOfWork)
        .values({ id, teamId, keptAt, ...changed })
        .onConflictDoUpdate({ target: bodiesOfWork.id, set: changed });
    },

    async remove(bodyId) {
      await session.delete(bodiesOfWork).where(eq(bodiesOfWork.id, bodyId));
    },

    async tell(told) {
      if (told.length === 0) return;
      const rows = told.map((one) => ({
        ...one,
        optimisticOn: one.optimisticOn ?? null,
        likelyOn: one.likelyOn ?? null,
        pessimisticOn: one.pessimisticOn ?? null,
      }));
      const given = (column: string) => sql.raw(`excluded.${column}`);
      await session
        .insert(toldDates)
        .values(rows)
        .onConflictDoUpdate({
          target: [toldDates.bodyId, toldDates.toldOn],
          set: {
            leftPoints: given('left_points'),
            sprintsSinceSaid: given('sprints_since_said'),
            optimisticOn: given('optimistic_on'),
            likelyOn: given('likely_on'),
            pessimisticOn: given('pessimistic_on'),
          },
        });
    },
  };
}
