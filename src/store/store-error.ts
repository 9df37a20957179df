/** Why the database cannot be used, for the operator: what is wrong and how to mend it, never a password. */

export type StoreErrorCode =
  | 'database-url-invalid'
  | 'database-unreachable'
  | 'database-login-refused'
  | 'database-missing'
  | 'database-rights-missing'
  | 'database-too-old'
  | 'database-migration-failed'
  | 'data-folder-in-use'
  | 'data-folder-of-others'
  | 'data-folder-unusable'
  | 'no-such-row';

export class StoreError extends Error {
  override readonly name = 'StoreError';
  readonly code: StoreErrorCode;
  /** What the operator can do about it, in a sentence. */
  readonly mend: string;

  constructor(code: StoreErrorCode, message: string, mend: string, options: { cause?: unknown } = {}) {
    super(message, options);
    this.code = code;
    this.mend = mend;
  }
}
