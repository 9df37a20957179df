/** Brings what was posted about a member's day up to date, the prompt, its reminder and the last call, after something about the member's day changed. */
import type { Day } from '../../sprint/calendar.ts';
import type { Transaction } from '../ports/store.ts';
import type { Prompt, SprintCard } from '../team/team.ts';

export async function refreshPrompt(
  tx: Transaction,
  sprintId: string,
  userId: string,
  day: Day,
): Promise<void> {
  const prompt = await tx.read.promptOf(sprintId, userId, day);
  for (const postId of prompt ? postIdsOf(prompt) : []) await tx.write.posts.refresh(postId);
}

/** What was posted about a member's day. */
export function postIdsOf({ postId, reminderPostId, lastCallPostId }: Prompt): string[] {
  return [postId, reminderPostId, lastCallPostId].filter((id) => id !== undefined);
}

/** Brings the day's lists of a card's owners up to date, for people answer by the places in them. */
export async function refreshOwnersPrompts(
  tx: Transaction,
  { sprintId, ownerIds }: Pick<SprintCard, 'sprintId' | 'ownerIds'>,
  day: Day,
): Promise<void> {
  for (const userId of ownerIds) await refreshPrompt(tx, sprintId, userId, day);
}
