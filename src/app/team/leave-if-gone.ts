/** After a direct message was refused: a person whose account is gone leaves their teams, without waiting for the daily look-up. */

import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { DeliveryFailure } from '../posting/delivery-failure.ts';
import type { Post } from '../posting/posts.ts';
import { leaveAllTeams } from './leave-team.ts';

/**
 * The platform's answers that are about the recipient. Others, such as a missing scope or a token that was revoked, are
 * about the bot, and would otherwise take everybody off every team.
 */
const ABOUT_RECIPIENT = new Set([
  'user_disabled',
  'user_not_found',
  'users_not_found',
  'user_not_visible',
  'channel_not_found',
]);

/** @returns whether the person left */
export async function leaveIfGone(
  deps: Pick<AppDependencies, 'store' | 'directory'>,
  { workspaceId, recipient }: Pick<Post, 'workspaceId' | 'recipient'>,
  failure: DeliveryFailure,
): Promise<boolean> {
  if (!('userId' in recipient) || failure.kind !== 'refused' || !ABOUT_RECIPIENT.has(failure.code))
    return false;
  const { userId } = recipient;
  // The account must be gone by the platform's own word; where that can't be had, the next refusal asks again.
  const profile = await deps.directory.profile(workspaceId, userId).catch(() => undefined);
  if (!profile?.isDeactivated) return false;
  await deps.store.transaction((tx) => leaveAllTeams(tx, { workspaceId, userId }));
  return true;
}
