/**
 * The `erase` command: erases somebody who can't ask any more, for the operator. Does what `/loadline privacy` does, even
 * when a team is left without a facilitator. With a data folder the bot must be stopped, since only one process may
 * have it open.
 */
import { parseArgs } from 'node:util';
import { eraseForOperator } from './app/privacy/erase-person.ts';
import { Refusal } from './app/refusal.ts';
import { refusalWords } from './app/refusal-words.ts';
import { ConfigError, readConfig } from './config.ts';
import { readSecretFiles } from './secret-files.ts';
import { openDatabase } from './store/open-database.ts';
import { StoreError } from './store/store-error.ts';

const USAGE =
  'Say who: npm run erase -- --workspace ID --user ID, with the ids as the chat platform writes them.';

async function erase(workspaceId: string, userId: string): Promise<string> {
  const { databaseUrl, dataFolder } = readConfig(readSecretFiles(process.env));
  const database = await openDatabase({ databaseUrl, dataFolder });
  try {
    const { records, teamNames } = await eraseForOperator(database, { workspaceId, userId });
    const teams = teamNames.length === 0 ? '' : ` Teams: ${teamNames.join(', ')}.`;
    return `Erased. Records that no longer tell of the person: ${records}.${teams}`;
  } finally {
    await database.close();
  }
}

/** @returns undefined when it is not said who is meant */
function personIn(args: readonly string[]): { workspace: string; user: string } | undefined {
  const options = { workspace: { type: 'string' }, user: { type: 'string' } } as const;
  try {
    const { workspace, user } = parseArgs({ args: [...args], options }).values;
    return workspace && user ? { workspace, user } : undefined;
  } catch {
    return undefined;
  }
}

const person = personIn(process.argv.slice(2));
if (!person) {
  console.error(USAGE);
  process.exitCode = 2;
} else {
  try {
    console.log(await erase(person.workspace, person.user));
  } catch (error) {
    if (error instanceof ConfigError) console.error(error.message);
    else if (error instanceof StoreError) console.error(`${error.message} ${error.mend}`);
    else if (error instanceof Refusal) console.error(refusalWords(error).what);
    else throw error;
    process.exitCode = 1;
  }
}
