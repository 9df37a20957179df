/**
 * What is meant for the team isn't posted where people of another organisation read it too, until a facilitator has said yes:
 * it waits, and the facilitators hear what would be seen there. A yes, or a move to another channel, queues it again.
 */
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { HELD_BACK } from './delivery-failure.ts';
import type { Post } from './posts.ts';
import { teamOf, tellOfChannel } from './tell-undelivered.ts';

/**
 * @param state that of the post while it waits
 * @returns whether it waits
 * @throws DeliveryFailure the platform doesn't say whether the channel is shared
 */
export async function holdBack(
  deps: AppDependencies,
  post: Post,
  state: 'sent' | 'pending',
): Promise<boolean> {
  const { workspaceId, recipient, subject } = post;
  // Where the team has moved to is no secret of its work.
  if (!('channelId' in recipient) || subject.kind === 'team-moved') return false;
  const { channelId } = recipient;
  if (!(await deps.messenger.isShared(workspaceId, channelId))) return false;
  return deps.store.transaction(async (tx) => {
    const team = await teamOf(tx, post);
    if (!team || team.sharedChannelId === channelId) return false;
    await tx.write.posts.update(post.id, { state, lastError: HELD_BACK });
    if (team.channelId === channelId) await tellOfChannel(tx, team, 'shared', deps.clock.now());
    return true;
  });
}
