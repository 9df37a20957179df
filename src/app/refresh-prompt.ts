/** Brings the day's prompt up to date where it stands, after something about the member's day changed. */
import type { Day } from '../sprint/calendar.ts';
import type { Transaction } from './ports.ts';

export async function refreshPrompt(
  tx: Transaction,
  sprintId: string,
  userId: string,
  day: Day,
): Promise<void> {
  const prompt = await tx.promptOf(sprintId, userId, day);
  if (prompt?.postId !== undefined) await tx.refreshPost(prompt.postId);
}
