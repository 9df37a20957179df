/**
 * The `dump` and `restore` commands: a data folder to one file of SQL, and back. A database on a server has
 * the server's own tools for this. Must never overwrite anything.
 */
import { open, readFile, rm } from 'node:fs/promises';
import { dumpDataFolder, restoreDataFolder } from '../store/embedded/data-folder-dump.ts';
import { StoreError } from '../store/store-error.ts';
import { say, sayCode } from '../words/say.ts';

/** @returns the exit code */
async function run([word, file, ...others]: readonly string[]): Promise<number> {
  if ((word !== 'dump' && word !== 'restore') || file === undefined || others.length > 0) {
    console.error(say('operator-folder-usage'));
    return 2;
  }
  const dataFolder = process.env.LOADLINE_DATA_FOLDER?.trim() || './data';
  try {
    if (word === 'dump') await dumpTo(file, dataFolder);
    else await restoreDataFolder(dataFolder, await readFile(file, 'utf8'));
    console.log(
      word === 'dump' ? say('operator-dumped', { file }) : say('operator-restored', { folder: dataFolder }),
    );
    return 0;
  } catch (error) {
    const { code, syscall } = error as { code?: unknown; syscall?: unknown };
    if (error instanceof StoreError) console.error(sayCode('start', error.problem));
    else if (syscall !== undefined)
      console.error(say('operator-file-unusable', { file, reason: String(code) }));
    else throw error;
    return 1;
  }
}

/** Readable by its owner only: it holds what people wrote. */
async function dumpTo(file: string, dataFolder: string): Promise<void> {
  const handle = await open(file, 'wx', 0o600);
  try {
    await handle.writeFile(await dumpDataFolder(dataFolder));
    await handle.sync();
  } catch (error) {
    // Half a file could be mistaken for a backup.
    await rm(file, { force: true });
    throw error;
  } finally {
    await handle.close();
  }
}

process.exitCode = await run(process.argv.slice(2));
