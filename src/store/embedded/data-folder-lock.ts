/**
 * One process at a time may have a data folder open: two would destroy it. The lock is SQLite's lock on
 * a file of its own, because the operating system then releases it even when the process is killed, and
 * Node.js offers no other such lock.
 */
import { existsSync } from 'node:fs';
import { access, constants, mkdir, stat } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { StoreError } from '../store-error.ts';

/** SQLite's result code SQLITE_BUSY: another process holds the lock. */
const SQLITE_BUSY = 5;

/**
 * Creates the folder if it isn't there, and locks it until the returned function is called.
 *
 * @throws StoreError `data-folder-in-use`, `data-folder-unusable`, `data-folder-of-others`.
 */
export async function lockDataFolder(dataFolder: string): Promise<() => void> {
  const folder = resolve(dataFolder);
  let lock: DatabaseSync | undefined;
  try {
    await makeFolder(folder);
    refuseFolderOfOthers(folder, (await stat(folder)).uid);
    await requireWritable(folder);
    lock = new DatabaseSync(join(folder, 'lock'), { timeout: 0 });
    lock.exec('BEGIN EXCLUSIVE');
    const held = lock;
    return () => held.close();
  } catch (error) {
    lock?.close();
    if (error instanceof StoreError) throw error;
    if ((error as { errcode?: unknown }).errcode === SQLITE_BUSY) {
      throw new StoreError({ code: 'data-folder-in-use', folder });
    }
    const { message } = error as Error;
    throw new StoreError({ code: 'data-folder-unusable', folder, reason: message }, { cause: error });
  }
}

/**
 * With those above it that aren't there. One by one: what Node.js offers for this tries for ever where a folder exists in
 * which none can be made, as `/proc` is.
 */
async function makeFolder(folder: string): Promise<void> {
  try {
    await mkdir(folder);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EEXIST' && (await stat(folder)).isDirectory()) return;
    const parent = dirname(folder);
    if (code !== 'ENOENT' || existsSync(parent)) throw error;
    await makeFolder(parent);
    await makeFolder(folder);
  }
}

/** Even reading writes: the database renews its own files, and the bot couldn't open them if they were root's. */
function refuseFolderOfOthers(folder: string, ownerId: number): void {
  if (process.geteuid?.() !== 0 || ownerId === 0) return;
  throw new StoreError({ code: 'data-folder-of-others', folder, owner: String(ownerId) });
}

/** What can be read and not written would be taken for damaged. */
async function requireWritable(folder: string): Promise<void> {
  await access(folder, constants.W_OK);
  await access(join(folder, 'database'), constants.W_OK).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'ENOENT') throw error;
  });
}
