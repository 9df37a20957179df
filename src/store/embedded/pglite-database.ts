/** A database inside this process, in a folder or in memory: for one bot without a server. */
import { existsSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { setImmediate as turn } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { PGlite, type Transaction } from '@electric-sql/pglite';
import { sql } from 'drizzle-orm';
import { drizzle } from 'drizzle-orm/pglite';
import { migrate } from 'drizzle-orm/pglite/migrator';
import { fromPglite } from 'pg-boss';
import type { Database } from '../database.ts';
import type { TroubleOf } from '../database-trouble.ts';
import { MIGRATIONS, migrated } from '../migrate.ts';
import type { SqlSession } from '../queries/sql-session.ts';
import { type BackgroundErrorListener, openJobSender } from '../queue/job-sender.ts';
import { storeOver } from '../store.ts';
import { StoreError } from '../store-error.ts';
import { imageFile, keptImage, unpackImage } from './data-folder-image.ts';
import { lockDataFolder } from './data-folder-lock.ts';
import {
  freeBytes,
  fullDiskError,
  isNoRoom,
  ROOM_FLOOR_BYTES,
  refuseFullDisk,
  refusingWithoutRoom,
} from './disk-room.ts';

/** In place of a folder: everything is gone when the process ends. */
export const IN_MEMORY = 'memory';

/**
 * Postgres clears its buffers at each start. With its usual 128 MB PGlite starts in 0.35 s, with 16 MB in 0.22 s, and holds as
 * much less memory. What they don't hold, the operating system's own buffers do.
 */
const START_PARAMS = [
  ...PGlite.defaultStartParams,
  ...['-c', 'shared_buffers=16MB'],
  // Nothing gathers statistics in PGlite, so it takes few rows for many and would read whole tables where an index finds them.
  ...['-c', 'random_page_cost=0.5'],
];

/**
 * V8 compiles what of PGlite runs often once more, to be faster. For the function that computes every expression of a query that
 * takes 600 MB and two seconds, at every start. So it is asked to leave PGlite as the quick compiler made it: a start then
 * peaks at a third of the memory and is done sooner; small statements take a third longer, large ones up to twice as long.
 */
function sparingMemory(): void {
  for (const flag of ['--liftoff-only', '--no-wasm-tier-up', '--no-wasm-dynamic-tiering'])
    setFlagsFromString(flag);
}

async function startInMemory(memoryImage: Blob | undefined): Promise<PGlite> {
  const image = memoryImage ?? (await keptImage());
  return PGlite.create({ startParams: START_PARAMS, ...(image ? { loadDataDir: image } : {}) });
}

async function startInFolder(dataFolder: string): Promise<PGlite> {
  const folder = join(dataFolder, 'database');
  const isNew = !existsSync(folder);
  try {
    await beginWithImage(folder);
    const open = await PGlite.create(folder, { startParams: START_PARAMS });
    return refusingWithoutRoom(open, () => freeBytes(dataFolder) >= ROOM_FLOOR_BYTES);
  } catch (cause) {
    const fullDisk = fullDiskError(dataFolder, cause);
    // Half a database that holds nothing yet would look like a damaged one to the next start.
    if (isNew) await rm(folder, { recursive: true, force: true });
    throw fullDisk ?? new StoreError({ code: 'data-folder-damaged', folder: dataFolder }, { cause });
  }
}

/** Where there is no database yet, spares PGlite making one, if it can. */
async function beginWithImage(folder: string): Promise<void> {
  if (existsSync(folder)) return;
  try {
    await unpackImage(await imageFile(), folder);
  } catch {
    // There is none, or it can't be used: PGlite creates everything, or fails with the reason.
  }
}

/** @throws StoreError when the folder can't be used or another process has it open. */
export async function openPglite(
  dataFolder: string,
  onBackgroundError: BackgroundErrorListener,
  memoryImage?: Blob,
): Promise<Database> {
  const isInFolder = dataFolder !== IN_MEMORY;
  if (isInFolder) refuseFullDisk(dataFolder);
  const unlock = isInFolder ? await lockDataFolder(dataFolder) : () => undefined;
  let client: PGlite | undefined;
  sparingMemory();
  try {
    const open = isInFolder ? await startInFolder(dataFolder) : await startInMemory(memoryImage);
    client = open;
    await migrated(() => migrate(drizzle(open), MIGRATIONS));
    const database = drizzle(lettingOthersTurn(open));
    const queueConnection = { db: fromPglite(lettingOthersTurn(open) as never), backend: 'pglite' as const };
    const sender = await openJobSender(queueConnection, onBackgroundError);
    const session = database as unknown as SqlSession;
    let closing: Promise<void> | undefined;
    const troubleOf: TroubleOf = (error) => (isNoRoom(error) ? 'database-full' : undefined);
    const store = storeOver({
      session: () => session,
      sender,
      troubleOf,
      isAlone: true,
      onTrouble: () => undefined,
    });
    return {
      kind: 'pglite',
      encryption: undefined,
      store,
      // There is but one connection.
      bulkStore: store,
      session,
      queueConnection,
      onJobsCommitted: sender.onCommitted,
      onBackgroundError,
      async ping() {
        await session.execute(sql`select 1`);
      },
      async state() {
        await session.execute(sql`select 1`);
        const isFull = isInFolder && freeBytes(dataFolder) < ROOM_FLOOR_BYTES;
        return { trouble: isFull ? 'database-full' : undefined, clockAheadMs: 0 };
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
    throw isInFolder && isNoRoom(error) ? fullDiskError(dataFolder, error) : error;
  }
}

/**
 * PGlite works in this very thread, and is done before it gives a promise back. So a chain of statements, each awaited,
 * would hold the loop from its first to its last: nobody else is answered, however small each of them is.
 *
 * @returns the same database, in which the loop turns after every statement, also where several were asked for at once
 */
function lettingOthersTurn<Open extends PGlite | Transaction>(open: Open): Open {
  // One is begun when the turn after the one before it has come: PGlite would begin it at once.
  let before: Promise<unknown> = Promise.resolve();
  return new Proxy(open, {
    get(target, name) {
      const value: unknown = Reflect.get(target, name, target);
      if (typeof value !== 'function') return value;
      const method = (value as (...given: unknown[]) => unknown).bind(target);
      if (name === 'transaction') {
        return (work: (tx: Transaction) => unknown, ...rest: unknown[]) =>
          method((tx: Transaction) => work(lettingOthersTurn(tx)), ...rest);
      }
      if (name !== 'query' && name !== 'exec') return method;
      return async (...given: unknown[]) => {
        const result = before.then(() => method(...given));
        before = result.then(
          () => turn(),
          () => turn(),
        );
        await before;
        return result;
      };
    },
  });
}
