/**
 * The `dump` and `restore` commands: a data folder to one file of SQL, and back. A database on a server has
 * the server's own tools for this. Must never overwrite anything.
 */
import { open, readFile, rm } from 'node:fs/promises';
import { dumpDataFolder, restoreDataFolder } from '../store/embedded/data-folder-dump.ts';
import { StoreError } from '../store/store-error.ts';
import { say, sayCode } from '../words/say.ts';
import type { CommandResult, Environment } from './operator-command.ts';

type Work = (file: string, dataFolder: string) => Promise<string>;

async function run(
  work: Work,
  [file, ...others]: readonly string[],
  environment: Environment,
): Promise<CommandResult> {
  if (file === undefined || others.length > 0) return { code: 2, stderr: say('operator-folder-usage') };
  try {
    return { code: 0, stdout: await work(file, environment.LOADLINE_DATA_FOLDER?.trim() || './data') };
  } catch (error) {
    if (error instanceof StoreError) return { code: 1, stderr: sayCode('start', error.problem) };
    const { code, syscall } = error as { code?: unknown; syscall?: unknown };
    if (syscall === undefined) throw error;
    return { code: 1, stderr: say('operator-file-unusable', { file, reason: String(code) }) };
  }
}

export function dump(args: readonly string[], environment: Environment): Promise<CommandResult> {
  const work: Work = async (file, dataFolder) => {
    await dumpTo(file, dataFolder);
    return say('operator-dumped', { file });
  };
  return run(work, args, environment);
}

export function restore(args: readonly string[], environment: Environment): Promise<CommandResult> {
  const work: Work = async (file, folder) => {
    await restoreDataFolder(folder, await readFile(file, 'utf8'));
    return say('operator-restored', { folder });
  };
  return run(work, args, environment);
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
