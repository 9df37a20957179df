/** Holds the stored tokens against the keys that are given, and moves them to a new key. Shows no key and no token. */
import type { Store } from '../ports/store.ts';
import { TokenKeyError, type TokenKeys } from './token-keys.ts';

const PAGE = 500;

/** @returns a sentence for each key that is missing or another one, naming its name */
export async function tokenKeyProblems(store: Store, keys: TokenKeys): Promise<string[]> {
  const problems = new Map<string, string>();
  let after: string | undefined;
  do {
    const page = await store.read((read) => read.sealedInstallations({ after, limit: PAGE }));
    for (const { workspaceId, token } of page) {
      if (!token || problems.has(token.keyName)) continue;
      try {
        keys.open(workspaceId, token);
      } catch (error) {
        if (!(error instanceof TokenKeyError)) throw error;
        problems.set(token.keyName, sentenceOf(error));
      }
    }
    after = page.at(-1)?.workspaceId;
  } while (after !== undefined);
  return [...problems.values()];
}

function sentenceOf({ keyName, problem }: TokenKeyError): string {
  return problem === 'no such key'
    ? `The key ${keyName} is missing in LOADLINE_TOKEN_KEYS, and stored tokens are encrypted with it. Add it behind the others, then run npm run rotate-keys.`
    : `The key ${keyName} in LOADLINE_TOKEN_KEYS does not open the tokens that were stored under this name. Put the former key back, under its name.`;
}

/**
 * Encrypts all tokens with the first key, one by one, while others work. Whatever changes meanwhile is left as it is:
 * an installation made now has the first key already.
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
