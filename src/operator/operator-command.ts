/**
 * What the operator's commands have in common: they read the bot's settings, work on its database, and print the result or
 * what is wrong. With a data folder the bot must be stopped, since only one process may have it open.
 */
import { type Config, ConfigError, readConfig } from '../config.ts';
import { readSecretFiles } from '../secret-files.ts';
import type { Database } from '../store/database.ts';
import { openDatabase } from '../store/open-database.ts';
import { StoreError } from '../store/store-error.ts';
import { sayCode } from '../words/say.ts';

/** The command can't be carried out; its message is for the operator. */
export class CommandRefused extends Error {
  override readonly name = 'CommandRefused';
  readonly code = 'command-refused';
}

/**
 * Prints what the work returns, or why it failed; then the process ends with code 1.
 *
 * @throws any error but a bad setting, an unusable database and a `CommandRefused`
 */
export async function runCommand(work: (config: Config) => Promise<string>): Promise<void> {
  try {
    console.log(await work(readConfig(readSecretFiles(process.env))));
  } catch (error) {
    if (error instanceof CommandRefused) console.error(error.message);
    else if (error instanceof StoreError) console.error(sayCode('start', error.problem));
    else if (error instanceof ConfigError) {
      for (const problem of error.problems) console.error(sayCode('start', problem));
    } else throw error;
    process.exitCode = 1;
  }
}

/** Opens the bot's database for the work, and closes it in any case. */
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

/** Shows how to write the command; the process ends with code 2. */
export function showUsage(usage: string): void {
  console.error(usage);
  process.exitCode = 2;
}
