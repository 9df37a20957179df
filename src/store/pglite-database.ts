/** A database inside this process, in a folder or in memory: for one bot without a server. */
import { join } from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import { sql } from 'drizzle-orm';
import { drizzle } from 'drizzle-orm/pglite';
import { migrate } from 'drizzle-orm/pglite/migrator';
import { fromPglite } from 'pg-boss';
import { lockDataFolder } from './data-folder-lock.ts';
import type { Database } from './database.ts';
import type { BackgroundErrorListener } from './job-sender.ts';
import { openJobSender } from './job-sender.ts';
import { MIGRATIONS, migrated } from './migrate.ts';
import type { SqlSession } from './sql-session.ts';
import { storeOver } from './store.ts';
import { StoreError } from './store-error.ts';

/** In place of a folder: everything is gone when the process ends. */
export const IN_MEMORY = 'memory';

async function start(dataFolder: string, memoryImage: Blob | undefined): Promise<PGlite> {
  try {
    if (dataFolder !== IN_MEMORY) return await PGlite.create(join(dataFolder, 'database'));
    return await PGlite.create(memoryImage ? { loadDataDir: memoryImage } : {});
  } catch (error) {
    throw new StoreError(
      'data-folder-unusable',
      `The database in the data folder ${dataFolder} cannot be started.`,
      'Restore the folder from a backup, or give another folder to begin anew.',
      { cause: error },
    );
  }
}

/** @throws StoreError when the folder cannot be used or another process has it open. */
export async function openPglite(
  dataFolder: string,
  onBackgroundError: BackgroundErrorListener,
  memoryImage?: Blob,
): Promise<Database> {
  const unlock = dataFolder === IN_MEMORY ? () => undefined : await lockDataFolder(dataFolder);
  let client: PGlite | undefined;
  try {
    const open = await start(dataFolder, memoryImage);
    client = open;
    const database = drizzle(open);
    await migrated(() => migrate(database, MIGRATIONS));
    const queueConnection = { db: fromPglite(open as never), backend: 'pglite' as const };
    const sender = await openJobSender(queueConnection, onBackgroundError);
    const session = database as unknown as SqlSession;
    let closing: Promise<void> | undefined;
    const store = storeOver(session, sender);
    return {
      kind: 'pglite',
      store,
      // There is but one connection.
      bulkStore: store,
      session,
      queueConnection,
      onBackgroundError,
      async ping() {
        await session.execute(sql`select 1`);
      },
      close() {
        closing ??= sender
          .stop()
          .then(() => open.close())
          .finally(unlock);
        return closing;
      },
    };
  } catch (error) {
    await client?.close();
    unlock();
    throw error;
  }
}
