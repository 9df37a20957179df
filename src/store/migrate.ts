/** Brings a database up to date with `drizzle/`. */
import { fileURLToPath } from 'node:url';
import { codeOf } from '../error-chain.ts';
import { troubleOfServer } from './database-trouble.ts';
import { SQL_STATE, sqlErrorOf } from './sql-error.ts';
import { StoreError } from './store-error.ts';

export const MIGRATIONS = {
  migrationsFolder: fileURLToPath(new URL('../../drizzle', import.meta.url)),
  migrationsSchema: 'loadline',
  migrationsTable: 'migrations',
};

/** Runs the driver's own migrator and says what a failure means. */
export async function migrated(apply: () => Promise<void>): Promise<void> {
  try {
    await apply();
  } catch (error) {
    const state = sqlErrorOf(error)?.sqlState;
    // Others know more about it.
    if (state === SQL_STATE.insufficientPrivilege || troubleOfServer(error)) throw error;
    const reason = state ?? codeOf(error) ?? (error as Error).name;
    throw new StoreError({ code: 'database-migration-failed', reason }, { cause: error });
  }
}
