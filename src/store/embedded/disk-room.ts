/**
 * Room on the disk of the embedded database. Where Postgres finds none for its log it gives up in the middle of a commit,
 * and inside this process that means to spin for ever. So it must never come to that: below a floor nothing is
 * written any more.
 */
import { existsSync, statfsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import type { PGlite, Transaction } from '@electric-sql/pglite';
import { codeOf, errorChain } from '../../error-chain.ts';
import { SQL_STATE, sqlErrorOf } from '../sql-error.ts';
import { StoreError } from '../store-error.ts';

const MEGABYTE = 1024 * 1024;
/**
 * The log grows by files of 16 MB, and looking is no holding: another program may take room in the next moment. Several
 * of those files, then, and what one statement may write at most.
 */
export const ROOM_FLOOR_BYTES = 100 * MEGABYTE;
/** What an empty database takes, about. */
const NEW_DATABASE_BYTES = 50 * MEGABYTE;

/** Free for this user on the disk of a folder that need not be there yet. */
export function freeBytes(folder: string): number {
  const { blocks, bavail, bsize } = statfsSync(nearestFolder(resolve(folder)));
  // Some file systems don't say.
  return blocks === 0 ? Number.POSITIVE_INFINITY : bavail * bsize;
}

function nearestFolder(folder: string): string {
  const parent = dirname(folder);
  return parent === folder || existsSync(folder) ? folder : nearestFolder(parent);
}

function neededBytes(dataFolder: string): number {
  return ROOM_FLOOR_BYTES + (existsSync(join(dataFolder, 'database')) ? 0 : NEW_DATABASE_BYTES);
}

/** @throws StoreError `data-folder-full` when a database can't be opened, or made, in this folder */
export function refuseFullDisk(dataFolder: string): void {
  const needed = neededBytes(dataFolder);
  const free = freeBytes(dataFolder);
  if (free < needed) throw fullDisk(dataFolder, needed, undefined);
}

/**
 * What an error means that ended the work on a database in this folder.
 *
 * @returns `data-folder-full` when it was for want of room; otherwise undefined
 */
export function fullDiskError(dataFolder: string, cause: unknown): StoreError | undefined {
  const isForRoom = errorChain(cause).some((at) => ['ENOSPC', 'EDQUOT'].includes(codeOf(at) ?? ''));
  const isFull = isForRoom || isNoRoom(cause) || freeBytes(dataFolder) < ROOM_FLOOR_BYTES;
  return isFull ? fullDisk(dataFolder, neededBytes(dataFolder), cause) : undefined;
}

function fullDisk(dataFolder: string, neededBytes: number, cause: unknown): StoreError {
  const [free, needed] = [freeBytes(dataFolder), neededBytes].map((bytes) => Math.floor(bytes / MEGABYTE));
  return new StoreError(
    { code: 'data-folder-full', folder: resolve(dataFolder), free: free ?? 0, needed: needed ?? 0 },
    { cause },
  );
}

/** Whether the embedded database refused for want of room: itself, or as `refusingWithoutRoom` lets it. */
export function isNoRoom(error: unknown): boolean {
  const sqlState = sqlErrorOf(error)?.sqlState;
  return sqlState === SQL_STATE.diskFull || sqlState === SQL_STATE.readOnly;
}

/**
 * The same database, which refuses everything that writes (SQLSTATE 25006) for as long as there is no room. Reading goes
 * on. Looks before each statement, also in the middle of a transaction, which then fails and is rolled back.
 */
export function refusingWithoutRoom(client: PGlite, hasRoom: () => boolean): PGlite {
  let isRefusing = false;
  const adapt = async (): Promise<void> => {
    if (hasRoom() !== isRefusing) return;
    isRefusing = !isRefusing;
    await client.exec(`set default_transaction_read_only = ${isRefusing ? 'on' : 'off'}`);
  };
  const adaptIn = async (tx: Transaction): Promise<void> => {
    // Fails in a transaction that has failed, which writes nothing anyway.
    if (!hasRoom()) await tx.exec('set transaction read only').catch(() => undefined);
  };
  return lookingBefore(client, adapt, {
    transaction: (work: (tx: Transaction) => Promise<unknown>) =>
      client.transaction((tx) => work(lookingBefore(tx, () => adaptIn(tx)))),
  });
}

function lookingBefore<Of extends PGlite | Transaction>(
  client: Of,
  look: () => Promise<void>,
  others: Readonly<Record<string, (...given: never[]) => unknown>> = {},
): Of {
  const first =
    (run: (...given: never[]) => unknown) =>
    async (...given: never[]): Promise<unknown> => {
      await look();
      return run(...given);
    };
  return new Proxy(client, {
    get(target, name) {
      const value: unknown = others[name as string] ?? Reflect.get(target, name);
      if (typeof value !== 'function') return value;
      // Its private parts are known to the object itself only.
      const method = value.bind(target) as (...given: never[]) => unknown;
      return name === 'query' || name === 'exec' || name === 'transaction' ? first(method) : method;
    },
  });
}
