/**
 * Encrypts bot tokens for the database: AES-256-GCM with a random nonce of 96 bits. The workspace is part of what is
 * authenticated, so that a row copied to another workspace opens nothing. Must not let a key or a token into a message.
 */
import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';
import type { SealedToken } from './installation.ts';

/** A key by its name; the name is no secret, the key is. */
interface TokenKey {
  readonly name: string;
  /** 32 bytes. */
  readonly key: Uint8Array;
}

/** As the settings take them. */
const KEY_NAME = /^[\w-]{1,40}$/;

const CIPHER = 'aes-256-gcm';
/** First part of every sealed token: how to read the rest. */
const VERSION = 'v1';
const NONCE_BYTES = 12;
const TAG_BYTES = 16;

/** `damaged`: with no key could it be opened. `not opened`: it is of another key, or altered. */
type SealProblem = 'no such key' | 'not opened' | 'damaged';

/** A stored token can't be read with the keys that are given. */
export class TokenKeyError extends Error {
  override readonly name = 'TokenKeyError';
  readonly code = 'token-key';
  readonly keyName: string;
  readonly problem: SealProblem;

  constructor(keyName: string, problem: SealProblem) {
    super(`A token encrypted with the key ${keyName} can not be read: ${problem}.`);
    this.keyName = keyName;
    this.problem = problem;
  }
}

export interface TokenKeys {
  /** The name of the key that encrypts. */
  readonly sealingKeyName: string;
  /** Whether a key of this name is given. */
  has(keyName: string): boolean;
  /** Encrypts with the first key. */
  seal(workspaceId: string, token: string): SealedToken;
  /** @throws TokenKeyError when the key is missing or another one, or the text is of another workspace or altered */
  open(workspaceId: string, token: SealedToken): string;
}

/**
 * The token; undefined when its row is damaged, so that one workspace only is troubled by it.
 *
 * @throws TokenKeyError when its key is not given
 */
export function openedToken(keys: TokenKeys, workspaceId: string, token: SealedToken): string | undefined {
  try {
    return keys.open(workspaceId, token);
  } catch (error) {
    if (error instanceof TokenKeyError && error.problem !== 'no such key') return undefined;
    throw error;
  }
}

/** @param keys at least one; the first encrypts, all decrypt */
export function tokenKeys(keys: readonly [TokenKey, ...TokenKey[]]): TokenKeys {
  const byName = new Map(keys.map(({ name, key }) => [name, key]));
  const [first] = keys;
  return {
    sealingKeyName: first.name,
    has: (keyName) => byName.has(keyName),

    seal(workspaceId, token) {
      const nonce = randomBytes(NONCE_BYTES);
      const cipher = createCipheriv(CIPHER, first.key, nonce, { authTagLength: TAG_BYTES });
      cipher.setAAD(boundTo(workspaceId, first.name));
      const hidden = Buffer.concat([cipher.update(token, 'utf8'), cipher.final()]);
      const packed = Buffer.concat([nonce, cipher.getAuthTag(), hidden]).toString('base64url');
      return { sealed: `${VERSION}.${packed}`, keyName: first.name };
    },

    open(workspaceId, { sealed, keyName }) {
      const key = byName.get(keyName);
      // A name that no key can have is no key that is missing.
      if (!key) throw new TokenKeyError(keyName, KEY_NAME.test(keyName) ? 'no such key' : 'damaged');
      const [version, packed = '', ...more] = sealed.split('.');
      const bytes = Buffer.from(packed, 'base64url');
      if (version !== VERSION || more.length > 0 || bytes.length <= NONCE_BYTES + TAG_BYTES) {
        throw new TokenKeyError(keyName, 'damaged');
      }
      const nonce = bytes.subarray(0, NONCE_BYTES);
      const decipher = createDecipheriv(CIPHER, key, nonce, { authTagLength: TAG_BYTES });
      decipher.setAAD(boundTo(workspaceId, keyName));
      decipher.setAuthTag(bytes.subarray(NONCE_BYTES, NONCE_BYTES + TAG_BYTES));
      try {
        const shown = decipher.update(bytes.subarray(NONCE_BYTES + TAG_BYTES));
        return Buffer.concat([shown, decipher.final()]).toString('utf8');
      } catch {
        // Without the cause, which would only say the same.
        throw new TokenKeyError(keyName, 'not opened');
      }
    },
  };
}

/** What a sealed token belongs to. JSON, so that no two pairs give the same bytes. */
function boundTo(workspaceId: string, keyName: string): Buffer {
  return Buffer.from(JSON.stringify([VERSION, workspaceId, keyName]));
}
