/**
 * Records that a workspace installed the bot, or removed it; what the bot keeps of its teams stays as it is. Before that:
 * installations under way. Somebody's browser leaves for the platform and comes back. What comes back must be what left,
 * from the same browser, once, within ten minutes; any replica can tell, since attempts are in the database.
 */

import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
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

/** How long somebody may take to agree on the platform. */
export const ATTEMPT_LIFE_MS = 10 * 60_000;

/** Nobody may fill the database by opening a page; this many at once is far beyond any real rush. */
export const MOST_ATTEMPTS = 10_000;

const SECRET_BYTES = 32;

export interface BegunAttempt {
  /** Travels through the platform's addresses. */
  readonly state: string;
  /** Stays with the browser. */
  readonly browserKey: string;
}

/** @returns undefined when too many are under way */
export async function beginAttempt({ store, clock }: Ports): Promise<BegunAttempt | undefined> {
  const [state, browserKey] = [secret(), secret()];
  const now = clock.now();
  const attempt = {
    stateHash: hashOf(state),
    browserHash: hashOf(browserKey),
    expiresAt: new Date(now.getTime() + ATTEMPT_LIFE_MS),
  };
  const isAdded = await store.transaction((tx) =>
    tx.write.installations.addAttempt(attempt, now, MOST_ATTEMPTS),
  );
  return isAdded ? { state, browserKey } : undefined;
}

/** Uses the attempt up, successful or not. @returns whether it is this browser's, and in time */
export async function finishAttempt(
  { store, clock }: Ports,
  state: string,
  browserKey: string,
): Promise<boolean> {
  const attempt = await store.transaction((tx) => tx.write.installations.takeAttempt(hashOf(state)));
  if (!attempt || clock.now() >= attempt.expiresAt) return false;
  return timingSafeEqual(Buffer.from(attempt.browserHash), Buffer.from(hashOf(browserKey)));
}

function secret(): string {
  return randomBytes(SECRET_BYTES).toString('base64url');
}

function hashOf(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
