/**
 * The database takes nothing in, for a reason that nobody who asks can mend: nothing of the transaction was kept, and the
 * same will do later. `database-full`: no room. `database-read-only`: for instance a replica that was a primary before.
 * `database-busy`: no connection was left.
 */
export type StoreTroubleCode = 'database-full' | 'database-read-only' | 'database-busy';

export class StoreTrouble extends Error {
  override readonly name = 'StoreTrouble';
  readonly code: StoreTroubleCode;
  /** No other process works on the database, so none has carried out the same meanwhile. */
  readonly isAlone: boolean;

  constructor(code: StoreTroubleCode, { isAlone, cause }: { isAlone: boolean; cause: unknown }) {
    super(code, { cause });
    this.code = code;
    this.isAlone = isAlone;
  }
}
