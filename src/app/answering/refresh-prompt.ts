/** Brings the posted prompt of the day up to date, after something about the member's day changed. */
import type { Day } from '../../sprint/calendar.ts';
import type { Transaction } from '../ports/store.ts';
import type { SprintCard } from '../team/team.ts';

export async function refreshPrompt(
  tx: Transaction,
  sprintId: string,
  userId: string,
  day: Day,
): Promise<void> {
  const prompt = await tx.read.promptOf(sprintId, userId, day);
  if (prompt?.postId !== undefined) await tx.write.posts.refresh(prompt.postId);
}

/** Brings the day's lists of a card's owners up to date, for people answer by the places in them. */
export async function refreshOwnersPrompts(
  tx: Transaction,
  { sprintId, ownerIds }: Pick<SprintCard, 'sprintId' | 'ownerIds'>,
  day: Day,
): Promise<void> {
  for (const userId of ownerIds) await refreshPrompt(tx, sprintId, userId, day);
}
