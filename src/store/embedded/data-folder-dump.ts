/**
 * Writes what is in a data folder as SQL, and makes a data folder from such SQL. It is what `pg_dump` writes,
 * so it can be loaded into a Postgres server as well. Must change no row of what it reads.
 */
import { access } from 'node:fs/promises';
import { join } from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import { MIGRATIONS } from '../migrate.ts';
import { QUEUE_SCHEMA } from '../queue/job-sender.ts';
import { StoreError } from '../store-error.ts';
import { lockDataFolder } from './data-folder-lock.ts';
import {
  freeBytes,
  fullDiskError,
  ROOM_FLOOR_BYTES,
  refuseFullDisk,
  refusingWithoutRoom,
} from './disk-room.ts';

/** Owner and rights belong to the database that it came from. */
const DUMP_ARGS = [
  `--schema=${MIGRATIONS.migrationsSchema}`,
  `--schema=${QUEUE_SCHEMA}`,
  '--no-owner',
  '--no-privileges',
];

/** Postgres 17 brought this setting; older servers refuse it, and it is off anyway. */
const NEWER_SETTING = /^SET transaction_timeout = 0;\n/m;

/** @throws StoreError `data-folder-in-use` while a bot runs on it, `data-folder-empty`, `data-folder-damaged` */
export async function dumpDataFolder(dataFolder: string): Promise<string> {
  if (!(await hasDatabase(dataFolder))) {
    throw new StoreError({ code: 'data-folder-empty', folder: dataFolder });
  }
  return withDatabaseIn(dataFolder, async (open) => {
    const { pgDump } = await import('@electric-sql/pglite-tools/pg_dump');
    // Its types know the PGlite that it was built with, which is another copy of the same.
    const dump = await pgDump({ pg: open as never, args: DUMP_ARGS });
    return (await dump.text()).replace(NEWER_SETTING, '');
  });
}

/**
 * All or nothing. What was dumped with an older version is brought up to date by the next start.
 *
 * @throws StoreError `data-folder-full`, `data-folder-taken`, `dump-unusable`
 */
export async function restoreDataFolder(dataFolder: string, dump: string): Promise<void> {
  if (await hasDatabase(dataFolder)) {
    throw new StoreError({ code: 'data-folder-taken', folder: dataFolder });
  }
  await withDatabaseIn(dataFolder, async (open) => {
    try {
      await open.transaction((tx) => tx.exec(dump));
    } catch (cause) {
      const fullDisk = fullDiskError(dataFolder, cause);
      throw fullDisk ?? new StoreError({ code: 'dump-unusable', folder: dataFolder }, { cause });
    }
  });
}

async function withDatabaseIn<T>(dataFolder: string, work: (open: PGlite) => Promise<T>): Promise<T> {
  refuseFullDisk(dataFolder);
  const unlock = await lockDataFolder(dataFolder);
  try {
    const open = await PGlite.create(join(dataFolder, 'database')).catch((cause: unknown) => {
      const fullDisk = fullDiskError(dataFolder, cause);
      throw fullDisk ?? new StoreError({ code: 'data-folder-damaged', folder: dataFolder }, { cause });
    });
    try {
      return await work(refusingWithoutRoom(open, () => freeBytes(dataFolder) >= ROOM_FLOOR_BYTES));
    } finally {
      await open.close();
    }
  } finally {
    unlock();
  }
}

async function hasDatabase(dataFolder: string): Promise<boolean> {
  return access(join(dataFolder, 'database')).then(
    () => true,
    () => false,
  );
}
