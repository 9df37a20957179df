/** Records that a workspace installed the bot, or removed it; what the bot keeps of its teams stays as it is. */
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Installation, SealedToken } from './installation.ts';
import type { TokenKeys } from './token-keys.ts';

type Ports = Pick<AppDependencies, 'store' | 'clock'>;

/** What the platform granted. */
export type Granted = Omit<Installation, 'token' | 'installedAt' | 'revokedAt'> & {
  readonly botToken: string;
};

/**
 * Installs the bot, for the first time or again: clocks go on, and what the workspace was owed is sent.
 * @returns how many posts were waiting
 */
export async function recordInstallation(
  { store, clock }: Ports,
  keys: TokenKeys,
  { botToken, ...granted }: Granted,
): Promise<number> {
  const token = keys.seal(granted.workspaceId, botToken);
  return store.transaction(async (tx) => {
    await tx.write.installations.save({ ...granted, token, installedAt: clock.now(), revokedAt: undefined });
    return tx.write.posts.queueAllOf(granted.workspaceId);
  });
}

/**
 * Erases the token; until the bot is installed again, no clock runs and posts wait.
 *
 * @param onlyToken only while this is the token, so that an old message can't undo a new installation
 * @returns false when there was nothing to do
 */
export async function recordRemoval(
  { store, clock }: Ports,
  workspaceId: string,
  onlyToken: SealedToken,
): Promise<boolean> {
  return store.transaction((tx) => tx.write.installations.revoke(workspaceId, clock.now(), onlyToken));
}
