/**
 * The `erase` command: erases a person who can't ask for it themselves. Does what `/loadline privacy` does, even
 * when a team is left without a facilitator. With a data folder the bot must be stopped, since only one process may
 * have it open.
 */
import { parseArgs } from 'node:util';
import { erasePerson, type Wish } from '../app/privacy/erase-person.ts';
import { Refusal } from '../app/refusal.ts';
import { asOperator, notingStore } from '../app/security-events.ts';
import type { Database } from '../store/database.ts';
import { refusalWords } from '../words/refusals.ts';
import { say } from '../words/say.ts';
import {
  CommandRefused,
  type CommandResult,
  type Environment,
  noteBesideResult,
  onDatabase,
  runCommand,
} from './operator-command.ts';

interface Wanted extends Wish {
  readonly workspaceId: string;
  readonly userId: string;
}

const clock = { now: () => new Date() };

async function run(database: Database, { workspaceId, userId, ...wish }: Wanted): Promise<string> {
  try {
    const [deps, person] = [
      { store: notingStore(database.store, noteBesideResult), clock },
      { workspaceId, userId },
    ];
    const { records, teamNames, removesMessages } = await asOperator(() => erasePerson(deps, person, wish));
    return [
      say('operator-erased', { records }),
      ...(teamNames.length === 0 ? [] : [say('operator-erased-teams', { teams: teamNames })]),
      ...(removesMessages === undefined
        ? []
        : [say('operator-erased-messages', { known: removesMessages ? 'yes' : 'no' })]),
    ].join(' ');
  } catch (error) {
    throw error instanceof Refusal ? new CommandRefused(refusalWords(error, 'plain').what) : error;
  }
}

/** @returns undefined when the command doesn't name a person */
function personIn(args: readonly string[]): Wanted | undefined {
  const options = {
    workspace: { type: 'string' },
    user: { type: 'string' },
    messages: { type: 'boolean' },
  } as const;
  try {
    const { workspace, user, messages } = parseArgs({ args: [...args], options }).values;
    if (!workspace || !user) return undefined;
    return { workspaceId: workspace, userId: user, ...(messages && { removeMessages: true }) };
  } catch {
    return undefined;
  }
}

export async function erase(args: readonly string[], environment: Environment): Promise<CommandResult> {
  const person = personIn(args);
  if (!person) return { code: 2, stderr: say('operator-erase-usage') };
  return runCommand(environment, (config) => onDatabase(config, (database) => run(database, person)));
}
