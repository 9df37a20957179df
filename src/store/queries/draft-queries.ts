/** Keeps what somebody typed into the plan form, so that a closed form loses nothing. */
import { and, eq, sql } from 'drizzle-orm';
import type { Transaction } from '../../app/ports/store.ts';
import { planDrafts } from '../schema.ts';
import type { SqlSession } from './sql-session.ts';

export type DraftQueries = Pick<Transaction, 'saveDraft' | 'draftOf' | 'deleteDraft'>;

export function draftQueries(session: SqlSession): DraftQueries {
  const isOf = (teamId: string, userId: string) =>
    and(eq(planDrafts.teamId, teamId), eq(planDrafts.userId, userId));

  return {
    async saveDraft(teamId, userId, draft) {
      await session
        .insert(planDrafts)
        .values({ teamId, userId, draft })
        .onConflictDoUpdate({
          target: [planDrafts.teamId, planDrafts.userId],
          set: { draft: sql`excluded.draft`, savedAt: sql`excluded.saved_at` },
        });
    },

    async draftOf(teamId, userId) {
      const [row] = await session
        .select({ draft: planDrafts.draft })
        .from(planDrafts)
        .where(isOf(teamId, userId));
      // Drafts of before the plan asked for it do not hold it.
      return row && { ...row.draft, awayDays: row.draft.awayDays ?? '' };
    },

    async deleteDraft(teamId, userId) {
      await session.delete(planDrafts).where(isOf(teamId, userId));
    },
  };
}
