/** The facilitators hear of a card that was not blocked before, once for each block. Must not say who said so. */
import { currentBlock } from '../../sprint/blocks.ts';
import type { Transaction } from '../ports/store.ts';
import { directPost } from '../posting/post-kinds.ts';
import { facilitatorIdsOf, type Membership } from '../team/place.ts';
import type { Actor } from '../team/team.ts';
import type { SprintCardState } from './card-line.ts';

/** @param before the cards that are now said to be blocked, as they were before that */
export async function tellOfBlocks(
  tx: Transaction,
  { team, members }: Membership,
  { userId }: Actor,
  before: readonly SprintCardState[],
): Promise<void> {
  const fresh = before.filter((state) => !currentBlock(state)).map(({ card }) => card);
  const [first] = fresh;
  if (!first) return;
  const about = { sprintId: first.sprintId, cardIds: fresh.map(({ id }) => id) };
  const told = facilitatorIdsOf(members).filter((id) => id !== userId);
  const posts = told.map((id) => directPost(team, id, { kind: 'cards-blocked', ...about }));
  if (posts.length > 0) await tx.write.posts.add(posts);
}
