/**
 * What the operator's commands have in common: they read the bot's settings, work on its database, and say the result or
 * what is wrong. With a data folder the bot must be stopped, since only one process may have it open.
 */

import type { NoteSecurity } from '../app/security-events.ts';
import { type Config, ConfigError, readConfig } from '../config.ts';
import { createLogger, noteSecurity } from '../logger.ts';
import { readSecretFiles } from '../secret-files.ts';
import type { Database } from '../store/database.ts';
import { openDatabase } from '../store/open-database.ts';
import { StoreError } from '../store/store-error.ts';
import { sayCode } from '../words/say.ts';

export type Environment = Readonly<Record<string, string | undefined>>;

/** What a command prints, and the code with which its process ends: 1 when it failed, 2 when it was written wrongly. */
export interface CommandResult {
  readonly code: 0 | 1 | 2;
  readonly stdout?: string;
  readonly stderr?: string;
}

/** The command can't be carried out; its message is for the operator. */
export class CommandRefused extends Error {
  override readonly name = 'CommandRefused';
  readonly code = 'command-refused';
}

/**
 * Says what the work returns, or why it failed.
 *
 * @throws any error but a bad setting, an unusable database and a `CommandRefused`
 */
export async function runCommand(
  environment: Environment,
  work: (config: Config) => Promise<string>,
): Promise<CommandResult> {
  try {
    return { code: 0, stdout: await work(readConfig(readSecretFiles(environment))) };
  } catch (error) {
    if (error instanceof CommandRefused) return { code: 1, stderr: error.message };
    if (error instanceof StoreError) return { code: 1, stderr: sayCode('start', error.problem) };
    if (!(error instanceof ConfigError)) throw error;
    return { code: 1, stderr: error.problems.map((problem) => sayCode('start', problem)).join('\n') };
  }
}

/** To the error output beside the result, in the form of the bot's log, so that it can be kept with it. */
export const noteBesideResult: NoteSecurity = (event) =>
  noteSecurity(createLogger({ level: 'info', destination: process.stderr }), event);

/** Opens the bot's database for the work, and closes it in any case. */
export async function onDatabase<T>(
  { databaseUrl, databaseCa, dataFolder }: Pick<Config, 'databaseUrl' | 'databaseCa' | 'dataFolder'>,
  work: (database: Database) => Promise<T>,
): Promise<T> {
  const database = await openDatabase({ databaseUrl, databaseCa, dataFolder });
  try {
    return await work(database);
  } finally {
    await database.close();
  }
}
