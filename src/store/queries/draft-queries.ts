/** Keeps what somebody typed into the plan form, so that a closed form loses nothing. */
import { and, eq, sql } from 'drizzle-orm';
import type { DraftReading, Drafts } from '../../app/ports/repeatable.ts';
import { planDrafts } from '../schema.ts';
import type { SqlSession } from './sql-session.ts';

function isOf(teamId: string, userId: string) {
  return and(eq(planDrafts.teamId, teamId), eq(planDrafts.userId, userId));
}

export function draftReading(session: SqlSession): DraftReading {
  return {
    async draftOf(teamId, userId) {
      const [row] = await session
        .select({ draft: planDrafts.draft })
        .from(planDrafts)
        .where(isOf(teamId, userId));
      // Drafts of before the plan asked for it do not hold it.
      return row && { ...row.draft, awayDays: row.draft.awayDays ?? '' };
    },
  };
}

export function drafts(session: SqlSession): Drafts {
  return {
    async save(teamId, userId, draft) {
      await session
        .insert(planDrafts)
        .values({ teamId, userId, draft })
        .onConflictDoUpdate({
          target: [planDrafts.teamId, planDrafts.userId],
          set: { draft: sql`excluded.draft`, savedAt: sql`excluded.saved_at` },
        });
    },

    async delete(teamId, userId) {
      await session.delete(planDrafts).where(isOf(teamId, userId));
    },
  };
}
