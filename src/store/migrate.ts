/** Brings a database up to date with `drizzle/`. */
import { fileURLToPath } from 'node:url';
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
    // Said more precisely by whoever knows the connection.
    if (sqlErrorOf(error)?.sqlState === SQL_STATE.insufficientPrivilege) throw error;
    throw new StoreError(
      'database-migration-failed',
      'The database could not be brought up to date; nothing was changed.',
      'Check that this user may create schemas and tables in the database, and see the cause.',
      { cause: error },
    );
  }
}
