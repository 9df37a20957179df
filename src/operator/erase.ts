/**
 * The `erase` command: erases a person who can't ask for it themselves. Does what `/loadline privacy` does, even
 * when a team is left without a facilitator. With a data folder the bot must be stopped, since only one process may
 * have it open.
 */
import { parseArgs } from 'node:util';
import { eraseForOperator } from '../app/privacy/erase-person.ts';
import { Refusal } from '../app/refusal.ts';
import type { Database } from '../store/database.ts';
import { refusalWords } from '../words/refusals.ts';
import { say } from '../words/say.ts';
import { CommandRefused, onDatabase, runCommand, showUsage } from './operator-command.ts';

async function erase(database: Database, workspaceId: string, userId: string): Promise<string> {
  try {
    const { records, teamNames } = await eraseForOperator(database, { workspaceId, userId });
    const erased = say('operator-erased', { records });
    return teamNames.length === 0
      ? erased
      : `${erased} ${say('operator-erased-teams', { teams: teamNames })}`;
  } catch (error) {
    throw error instanceof Refusal ? new CommandRefused(refusalWords(error, 'plain').what) : error;
  }
}

/** @returns undefined when the command doesn't name a person */
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
} else showUsage(say('operator-erase-usage'));
