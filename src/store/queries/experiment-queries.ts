/** Reads and writes what teams try. */
import { asc, eq } from 'drizzle-orm';
import type { Experiment } from '../../app/experiments/experiment.ts';
import type { ExperimentReading, ExperimentWriting } from '../../app/ports/experiments.ts';
import { experiments } from '../schema.ts';
import type { SqlSession } from './sql-session.ts';

function experimentOf(row: typeof experiments.$inferSelect): Experiment {
  const { outcome, endedBy, endedAt, afterSprintId, entryOrder: _, ...rest } = row;
  const isOver = outcome !== null && endedBy !== null && endedAt !== null;
  return {
    ...rest,
    afterSprintId: afterSprintId ?? undefined,
    ended: isOver ? { how: outcome, by: endedBy, at: endedAt } : undefined,
  };
}

export function experimentReading(session: SqlSession): ExperimentReading {
  return {
    async experimentsOf(teamId) {
      const rows = await session
        .select()
        .from(experiments)
        .where(eq(experiments.teamId, teamId))
        .orderBy(asc(experiments.entryOrder));
      return rows.map(experimentOf);
    },

    async teamIdOfExperiment(experimentId) {
      const [row] = await session
        .select({ teamId: experiments.teamId })
        .from(experiments)
        .where(eq(experiments.id, experimentId));
      return row?.teamId;
    },
  };
}

export function experimentWriting(session: SqlSession): ExperimentWriting {
  return {
    async begin({ ended, afterSprintId, ...experiment }) {
      await session.insert(experiments).values({
        ...experiment,
        afterSprintId: afterSprintId ?? null,
        outcome: ended?.how ?? null,
        endedBy: ended?.by ?? null,
        endedAt: ended?.at ?? null,
      });
    },

    async end(experimentId, { how, by, at }) {
      await session
        .update(experiments)
        .set({ outcome: how, endedBy: by, endedAt: at })
        .where(eq(experiments.id, experimentId));
    },
  };
}
