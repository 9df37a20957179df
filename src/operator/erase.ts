/**
 * The `erase` command: erases somebody who can't ask any more, for the operator. Does what `/loadline privacy` does, even
 * when a team is left without a facilitator. With a data folder the bot must be stopped, since only one process may
 * have it open.
 */
import { parseArgs } from 'node:util';
import { eraseForOperator } from '../app/privacy/erase-person.ts';
import { Refusal } from '../app/refusal.ts';
import type { Database } from '../store/database.ts';
import { refusalWords } from '../words/refusals.ts';
import { CommandRefused, onDatabase, runCommand, showUsage } from './operator-command.ts';

const USAGE =
  'Say who: npm run erase -- --workspace ID --user ID, with the ids as the chat platform writes them.';

async function erase(database: Database, workspaceId: string, userId: string): Promise<string> {
  try {
    const { records, teamNames } = await eraseForOperator(database, { workspaceId, userId });
    const teams = teamNames.length === 0 ? '' : ` Teams: ${teamNames.join(', ')}.`;
    return `Erased. Records that no longer tell of the person: ${records}.${teams}`;
  } catch (error) {
    throw error instanceof Refusal ? new CommandRefused(refusalWords(error, 'plain').what) : error;
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
if (person) {
  const { workspace, user } = person;
  await runCommand((config) => onDatabase(config, (database) => erase(database, workspace, user)));
} else showUsage(USAGE);
