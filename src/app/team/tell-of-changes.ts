/** A team hears of each change of its settings, in its channel: from whom, and what is another now. */
import type { Transaction } from '../ports/store.ts';
import { channelPost } from '../posting/post-kinds.ts';
import { type TeamAndPeople, teamChanges, writtenChanges } from './team-changes.ts';

/** Records nothing where nothing has changed. */
export async function tellOfChanges(
  tx: Transaction,
  before: TeamAndPeople,
  after: TeamAndPeople,
  byUserId: string,
): Promise<void> {
  const changes = teamChanges(before, after);
  if (changes.length === 0) return;
  const { team } = after;
  await tx.write.posts.add([
    channelPost(team, { kind: 'team-changed', teamId: team.id, byUserId, reason: writtenChanges(changes) }),
  ]);
}
