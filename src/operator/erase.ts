/**
 * The `erase` command: erases a person who can't ask for it themselves. Does what `/loadline privacy` does, even
 * when a team is left without a facilitator. With a data folder the bot must be stopped, since only one process may
 * have it open.
 */
import { parseArgs } from 'node:util';
import { eraseForOperator } from '../app/privacy/erase-person.ts';
import { Refusal } from '../app/refusal.ts';
import { asOperator, type NoteSecurity, notingStore } from '../app/security-events.ts';
import { createLogger, noteSecurity } from '../logger.ts';
import type { Database } from '../store/database.ts';
import { refusalWords } from '../words/refusals.ts';
import { say } from '../words/say.ts';
import {
  CommandRefused,
  type CommandResult,
  type Environment,
  onDatabase,
  runCommand,
} from './operator-command.ts';

/** Beside the result, in the form of the bot's log, so that it can be kept with it. */
const note: NoteSecurity = (event) =>
  noteSecurity(createLogger({ level: 'info', destination: process.stderr }), event);

async function run(database: Database, person: { workspaceId: string; userId: string }): Promise<string> {
  try {
    const store = notingStore(database.store, note);
    const { records, teamNames } = await asOperator(() => eraseForOperator({ store }, person));
    const erased = say('operator-erased', { records });
    return teamNames.length === 0
      ? erased
      : `${erased} ${say('operator-erased-teams', { teams: teamNames })}`;
  } catch (error) {
    throw error instanceof Refusal ? new CommandRefused(refusalWords(error, 'plain').what) : error;
  }
}

/** @returns undefined when the command doesn't name a person */
function personIn(args: readonly string[]): { workspaceId: string; userId: string } | undefined {
  const options = { workspace: { type: 'string' }, user: { type: 'string' } } as const;
  try {
    const { workspace, user } = parseArgs({ args: [...args], options }).values;
    return workspace && user ? { workspaceId: workspace, userId: user } : undefined;
  } catch {
    return undefined;
  }
}

export async function erase(args: readonly string[], environment: Environment): Promise<CommandResult> {
  const person = personIn(args);
  if (!person) return { code: 2, stderr: say('operator-erase-usage') };
  return runCommand(environment, (config) => onDatabase(config, (database) => run(database, person)));
}
