/**
 * What the operator's commands have in common: they read the bot's settings, work on its database, print one result, and
 * say in words what is wrong. With a data folder the bot must be stopped, since only one process may have it open.
 */
import { type Config, ConfigError, readConfig } from '../config.ts';
import { readSecretFiles } from '../secret-files.ts';
import type { Database } from '../store/database.ts';
import { openDatabase } from '../store/open-database.ts';
import { StoreError } from '../store/store-error.ts';

/** The command can't be carried out; its message is all that the operator has to read. */
export class CommandRefused extends Error {
  override readonly name = 'CommandRefused';
  readonly code = 'command-refused';
}

/**
 * Prints what the work gives back, or what stood in its way; the process then ends with code 1.
 *
 * @throws whatever is neither a bad setting, an unusable database nor a `CommandRefused`
 */
export async function runCommand(work: (config: Config) => Promise<string>): Promise<void> {
  try {
    console.log(await work(readConfig(readSecretFiles(process.env))));
  } catch (error) {
    if (error instanceof ConfigError || error instanceof CommandRefused) console.error(error.message);
    else if (error instanceof StoreError) console.error(`${error.message} ${error.mend}`);
    else throw error;
    process.exitCode = 1;
  }
}

/** Opens the bot's database for the work, and closes it whatever comes of it. */
export async function onDatabase<T>(
  { databaseUrl, dataFolder }: Pick<Config, 'databaseUrl' | 'dataFolder'>,
  work: (database: Database) => Promise<T>,
): Promise<T> {
  const database = await openDatabase({ databaseUrl, dataFolder });
  try {
    return await work(database);
  } finally {
    await database.close();
  }
}

/** For a command that was not written as it must be: says how, and ends with code 2. */
export function showUsage(usage: string): void {
  console.error(usage);
  process.exitCode = 2;
}
