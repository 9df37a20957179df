/**
 * The `dump` and `restore` commands: a data folder to one file of SQL, and back. For databases on a server
 * there are the server's own tools. Must never overwrite what is there.
 */
import { open, readFile, rm } from 'node:fs/promises';
import { dumpDataFolder, restoreDataFolder } from '../store/embedded/data-folder-dump.ts';
import { StoreError } from '../store/store-error.ts';

const USAGE = `Usage, with the bot stopped and LOADLINE_DATA_FOLDER set as for the bot:
  npm run dump -- FILE       write the data folder to a new file
  npm run restore -- FILE    make the data folder from such a file`;

/** @returns the exit code */
async function run([word, file, ...others]: readonly string[]): Promise<number> {
  if ((word !== 'dump' && word !== 'restore') || file === undefined || others.length > 0) {
    console.error(USAGE);
    return 2;
  }
  const dataFolder = process.env.LOADLINE_DATA_FOLDER?.trim() || './data';
  try {
    if (word === 'dump') await dumpTo(file, dataFolder);
    else await restoreDataFolder(dataFolder, await readFile(file, 'utf8'));
    console.log(word === 'dump' ? `Written to ${file}.` : `Restored to ${dataFolder}.`);
    return 0;
  } catch (error) {
    const { code, syscall } = error as { code?: unknown; syscall?: unknown };
    if (error instanceof StoreError) console.error(`${error.message} ${error.mend}`);
    else if (syscall !== undefined) console.error(`The file ${file} can not be used (${String(code)}).`);
    else throw error;
    return 1;
  }
}

/** Readable by its owner only: it holds people's words. */
async function dumpTo(file: string, dataFolder: string): Promise<void> {
  const handle = await open(file, 'wx', 0o600);
  try {
    await handle.writeFile(await dumpDataFolder(dataFolder));
    await handle.sync();
  } catch (error) {
    // Half a file would be taken for a backup.
    await rm(file, { force: true });
    throw error;
  } finally {
    await handle.close();
  }
}

process.exitCode = await run(process.argv.slice(2));
