/**
 * Deletes, on the platform, what the bot wrote to people who were erased and asked for it. It takes minutes, for the platform
 * sets the pace; the person hears at the end how much went and how much could not. Any number of processes may do this at the
 * same time, and again: what is gone already counts neither way.
 */
import { randomUUID } from 'node:crypto';
import { addDays } from 'date-fns/addDays';
import { addMinutes } from 'date-fns/addMinutes';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { MessageRemoval } from '../ports/removals.ts';
import { DeliveryFailure } from '../posting/delivery-failure.ts';

type Ports = Pick<AppDependencies, 'store' | 'clock' | 'messenger'>;

/** Conversations in one tick; the others come next. */
const CONVERSATIONS_AT_ONCE = 5;
/** After which another process may go on with it, should this one have died. */
const LEASE_MINUTES = 5;

/** @returns in how many conversations something was looked at */
export async function removeMessages({ store, clock, messenger }: Ports): Promise<number> {
  const now = clock.now();
  const due = await store.transaction(async (tx) => {
    const claimed = await tx.claim.removalsDue(now, CONVERSATIONS_AT_ONCE);
    for (const removal of claimed) await tx.write.removals.goOn(removal, addMinutes(now, LEASE_MINUTES));
    return claimed;
  });
  await Promise.all(due.map((removal) => removeSome({ store, clock, messenger }, removal)));
  return due.length;
}

async function removeSome({ store, clock, messenger }: Ports, removal: MessageRemoval): Promise<void> {
  const { workspaceId, channelId, beforeTs } = removal;
  try {
    const step = await messenger.removeOwn(workspaceId, channelId, beforeTs);
    const after: MessageRemoval = {
      ...removal,
      beforeTs: step.beforeTs,
      removedCount: removal.removedCount + step.removed,
      leftCount: removal.leftCount + step.left,
    };
    await store.transaction(async (tx) => {
      if (!step.isDone) return tx.write.removals.goOn(after, addMinutes(clock.now(), 1));
      await tx.write.removals.end(removal.id);
      const { removedCount, leftCount } = after;
      if (removedCount + leftCount === 0) return;
      const reason = `${removedCount} ${leftCount}`;
      const subject = { kind: 'messages-removed', reason } as const;
      await tx.write.posts.add([{ id: randomUUID(), workspaceId, recipient: { channelId }, subject }]);
    });
  } catch (error) {
    if (!(error instanceof DeliveryFailure)) throw error;
    // Without the bot in the workspace, or the conversation, it is tried for as long as it is kept.
    const isLong = error.kind === 'not-installed' || error.kind === 'refused';
    const nextAt = isLong ? addDays(clock.now(), 1) : addMinutes(clock.now(), 1);
    await store.transaction((tx) => tx.write.removals.goOn(removal, nextAt));
  }
}
