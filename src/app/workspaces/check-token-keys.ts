/** Checks that the given keys open the stored tokens, and moves the tokens to a new key. Shows no key and no token. */
import type { Store } from '../ports/store.ts';
import { openedToken, TokenKeyError, type TokenKeys } from './token-keys.ts';

const PAGE = 500;

/** A key, by its name, that opens no stored token: it is missing, or its name is now that of another key. */
export interface TokenKeyProblem {
  readonly code: 'key-missing' | 'key-other';
  readonly name: string;
}

interface TokenKeyCheck {
  /** One for each key with which tokens are stored and that opens none of them. */
  readonly problems: readonly TokenKeyProblem[];
  /** Workspaces whose token can't be read although its key is the right one: they have to install the bot again. */
  readonly damagedIds: readonly string[];
}

/** A single damaged row is no reason to stop; a key that opens nothing is. */
export async function checkTokenKeys(store: Store, keys: TokenKeys): Promise<TokenKeyCheck> {
  const problems = new Map<string, TokenKeyProblem>();
  const right = new Set<string>();
  const unread: { readonly workspaceId: string; readonly keyName: string }[] = [];
  let after: string | undefined;
  do {
    const page = await store.read((read) => read.sealedInstallations({ after, limit: PAGE }));
    for (const { workspaceId, token } of page) {
      if (!token) continue;
      const { keyName } = token;
      try {
        keys.open(workspaceId, token);
        right.add(keyName);
      } catch (error) {
        if (!(error instanceof TokenKeyError)) throw error;
        unread.push({ workspaceId, keyName });
        if (error.problem === 'damaged') continue;
        const code = error.problem === 'no such key' ? 'key-missing' : 'key-other';
        problems.set(keyName, { code, name: keyName });
      }
    }
    after = page.at(-1)?.workspaceId;
  } while (after !== undefined);
  for (const keyName of right) problems.delete(keyName);
  return {
    problems: [...problems.values()],
    damagedIds: unread.filter(({ keyName }) => !problems.has(keyName)).map(({ workspaceId }) => workspaceId),
  };
}

/**
 * Encrypts all tokens with the first key, one by one, while the bot may run. A token that changes in the meantime is left
 * alone: a new installation uses the first key already. So is one that can't be read.
 *
 * @returns how many tokens were moved
 */
export async function rotateTokenKeys(store: Store, keys: TokenKeys): Promise<number> {
  let moved = 0;
  let after: string | undefined;
  do {
    const page = await store.read((read) =>
      read.sealedInstallations({ exceptKey: keys.sealingKeyName, after, limit: PAGE }),
    );
    for (const { workspaceId, token } of page) {
      if (!token) continue;
      const opened = openedToken(keys, workspaceId, token);
      if (opened === undefined) continue;
      const renewed = keys.seal(workspaceId, opened);
      if (await store.transaction((tx) => tx.write.installations.replaceToken(workspaceId, token, renewed)))
        moved += 1;
    }
    after = page.at(-1)?.workspaceId;
  } while (after !== undefined);
  return moved;
}
