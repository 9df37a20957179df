/** Checks that the given keys open the stored tokens, and moves the tokens to a new key. Shows no key and no token. */
import type { Store } from '../ports/store.ts';
import { TokenKeyError, type TokenKeys } from './token-keys.ts';

const PAGE = 500;

/** A key, by its name, that opens no stored token: it is missing, or its name is now that of another key. */
export interface TokenKeyProblem {
  readonly code: 'key-missing' | 'key-other';
  readonly name: string;
}

/** @returns a problem for each key with which tokens are stored and that can't open them */
export async function tokenKeyProblems(store: Store, keys: TokenKeys): Promise<TokenKeyProblem[]> {
  const problems = new Map<string, TokenKeyProblem>();
  let after: string | undefined;
  do {
    const page = await store.read((read) => read.sealedInstallations({ after, limit: PAGE }));
    for (const { workspaceId, token } of page) {
      if (!token || problems.has(token.keyName)) continue;
      try {
        keys.open(workspaceId, token);
      } catch (error) {
        if (!(error instanceof TokenKeyError)) throw error;
        const code = error.problem === 'no such key' ? 'key-missing' : 'key-other';
        problems.set(token.keyName, { code, name: error.keyName });
      }
    }
    after = page.at(-1)?.workspaceId;
  } while (after !== undefined);
  return [...problems.values()];
}

/**
 * Encrypts all tokens with the first key, one by one, while the bot may run. A token that changes in the meantime is left
 * alone: a new installation uses the first key already.
 *
 * @returns how many tokens were moved
 * @throws TokenKeyError
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
      const renewed = keys.seal(workspaceId, keys.open(workspaceId, token));
      if (await store.transaction((tx) => tx.write.installations.replaceToken(workspaceId, token, renewed)))
        moved += 1;
    }
    after = page.at(-1)?.workspaceId;
  } while (after !== undefined);
  return moved;
}
