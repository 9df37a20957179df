/** Opens the database and brings it up to date: a Postgres server when there is a URL, else PGlite. */
import type { Database } from './database.ts';
import { IN_MEMORY, openPglite } from './embedded/pglite-database.ts';
import { openPostgres } from './postgres/postgres-database.ts';
import type { BackgroundErrorListener } from './queue/job-sender.ts';

interface DatabaseOptions {
  /** `postgres://…`; undefined: no server. */
  readonly databaseUrl?: string | undefined;
  /** Certificates, in PEM, of the only authorities that may vouch for the server; undefined: the usual ones. */
  readonly databaseCa?: string | undefined;
  /** Folder for PGlite, or `memory` (the default); not used with a URL. */
  readonly dataFolder?: string | undefined;
  /** With `memory`: an image (PGlite's dump) to start from, which is quicker than starting from nothing. */
  readonly memoryImage?: Blob | undefined;
  /** Called for failures in the background that need no action, such as a dropped connection. */
  readonly onBackgroundError?: BackgroundErrorListener | undefined;
}

/**
 * Migrations are applied, safely so when several processes start at once.
 *
 * @throws StoreError with a stable code, and a hint for the operator.
 */
export async function openDatabase(options: DatabaseOptions): Promise<Database> {
  const { databaseUrl, databaseCa, dataFolder = IN_MEMORY, memoryImage } = options;
  const onBackgroundError = options.onBackgroundError ?? ((error) => process.emitWarning(error));
  if (databaseUrl === undefined) return openPglite(dataFolder, onBackgroundError, memoryImage);
  return openPostgres({ databaseUrl, databaseCa }, onBackgroundError);
}
