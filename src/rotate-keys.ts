/**
 * The `rotate-keys` command: encrypts the tokens of all workspaces with the first key of LOADLINE_TOKEN_KEYS, so that
 * the former keys can be taken out. The bot may run meanwhile, except with a data folder, which only one process may
 * have open.
 */
import { rotateTokenKeys, tokenKeyProblems } from './app/workspaces/check-token-keys.ts';
import { tokenKeys } from './app/workspaces/token-keys.ts';
import { ConfigError, readConfig } from './config.ts';
import { readSecretFiles } from './secret-files.ts';
import { openDatabase } from './store/open-database.ts';
import { StoreError } from './store/store-error.ts';

/** @returns what to say, and whether it was done */
async function rotateKeys(): Promise<{ readonly isDone: boolean; readonly words: string }> {
  const { access, databaseUrl, dataFolder } = readConfig(readSecretFiles(process.env));
  if (access.kind !== 'many-workspaces') {
    return { isDone: false, words: 'There are no keys to rotate: LOADLINE_TOKEN_KEYS is not set.' };
  }
  const keys = tokenKeys(access.tokenKeys);
  const database = await openDatabase({ databaseUrl, dataFolder });
  try {
    const problems = await tokenKeyProblems(database.store, keys);
    if (problems.length > 0) return { isDone: false, words: problems.join('\n') };
    const moved = await rotateTokenKeys(database.store, keys);
    return {
      isDone: true,
      words: `Tokens encrypted anew: ${moved}. All are under the key ${keys.sealingKeyName} now.`,
    };
  } finally {
    await database.close();
  }
}

try {
  const { isDone, words } = await rotateKeys();
  if (isDone) console.log(words);
  else console.error(words);
  process.exitCode = isDone ? 0 : 1;
} catch (error) {
  if (error instanceof ConfigError) console.error(error.message);
  else if (error instanceof StoreError) console.error(`${error.message} ${error.mend}`);
  else throw error;
  process.exitCode = 1;
}
