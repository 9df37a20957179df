/**
 * One process at a time may have a data folder open: two would destroy it. The lock is SQLite's lock on
 * a file of its own, because the operating system then releases it even when the process is killed, and
 * Node.js offers no other such lock.
 */
import { mkdir, stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { StoreError } from '../store-error.ts';

/** SQLite's result code SQLITE_BUSY: somebody else holds the lock. */
const SQLITE_BUSY = 5;

/**
 * Makes the folder if need be and holds it until the function given back is called.
 *
 * @throws StoreError `data-folder-in-use`, `data-folder-unusable`, `data-folder-of-others`.
 */
export async function lockDataFolder(dataFolder: string): Promise<() => void> {
  const folder = resolve(dataFolder);
  let lock: DatabaseSync | undefined;
  try {
    await mkdir(folder, { recursive: true });
    refuseFolderOfOthers(folder, (await stat(folder)).uid);
    lock = new DatabaseSync(join(folder, 'lock'), { timeout: 0 });
    lock.exec('BEGIN EXCLUSIVE');
    const held = lock;
    return () => held.close();
  } catch (error) {
    lock?.close();
    if (error instanceof StoreError) throw error;
    if ((error as { errcode?: unknown }).errcode === SQLITE_BUSY) {
      throw new StoreError(
        'data-folder-in-use',
        `Another process has the data folder ${folder} open.`,
        'Stop the other process, or give this one a folder of its own; several processes need a Postgres server.',
      );
    }
    throw new StoreError(
      'data-folder-unusable',
      `The data folder ${folder} cannot be used: ${(error as Error).message}.`,
      'Give a folder that this user may create and write to.',
      { cause: error },
    );
  }
}

/** To look is to write: the database renews files of its own, and as root's the bot could not open them any more. */
function refuseFolderOfOthers(folder: string, ownerId: number): void {
  if (process.geteuid?.() !== 0 || ownerId === 0) return;
  throw new StoreError(
    'data-folder-of-others',
    `The data folder ${folder} belongs to the user with the number ${ownerId}, and this is run as root.`,
    `Run it as that user, for example with setpriv --reuid=${ownerId} --clear-groups; files of root's in the folder would keep the bot from starting.`,
  );
}
