/**
 * The `forget` command: erases everything of a workspace at once, and says how much of what. Asks before, on a terminal.
 * With a data folder the bot must be stopped, since only one process may have it open.
 */
import { createInterface } from 'node:readline/promises';
import { parseArgs } from 'node:util';
import type { Tenant } from '../app/ports/teams.ts';
import { forgetWorkspace } from '../app/privacy/forget-workspace.ts';
import { asOperator, notingStore } from '../app/security-events.ts';
import type { Database } from '../store/database.ts';
import { say } from '../words/say.ts';
import {
  CommandRefused,
  type CommandResult,
  type Environment,
  noteBesideResult,
  onDatabase,
  runCommand,
} from './operator-command.ts';

/** Asks on the terminal; undefined: there is none. */
type Ask = ((question: string) => Promise<string>) | undefined;

interface Wanted {
  readonly workspaceId: string;
  readonly isSure: boolean;
}

async function run(database: Database, { workspaceId, isSure }: Wanted, ask: Ask): Promise<string> {
  const tenants = await database.store.read((read) => read.tenants());
  const tenant = tenants.find((one) => one.workspaceId === workspaceId);
  if (!tenant) throw new CommandRefused(unknown(workspaceId, tenants));
  const answer = isSure ? 'yes' : await ask?.(say('operator-forget-ask', { tenant: named(tenant) }));
  if (answer?.trim().toLowerCase() !== 'yes') throw new CommandRefused(say('operator-forget-not'));
  const deps = { store: notingStore(database.store, noteBesideResult), clock: { now } };
  const erased = Object.entries(await asOperator(() => forgetWorkspace(deps, workspaceId)));
  const records = erased.reduce((sum, [, rows]) => sum + rows, 0);
  return [
    say('operator-forgotten', { records, workspace: workspaceId }),
    ...erased.map(([table, rows]) => say('operator-forgotten-table', { table, rows })),
    say('operator-forgotten-elsewhere'),
  ].join('\n');
}

function now(): Date {
  return new Date();
}

function unknown(workspace: string, tenants: readonly Tenant[]): string {
  const known = tenants.length === 0 ? say('operator-forget-knows-none') : say('operator-forget-knows');
  return [say('operator-forget-unknown', { workspace }), known, ...tenants.map(named)].join('\n');
}

function named({ workspaceId: workspace, workspaceName: name, teamCount: teams }: Tenant): string {
  return name === undefined
    ? say('operator-forget-tenant', { workspace, teams })
    : say('operator-forget-tenant-named', { workspace, name, teams });
}

/** @returns undefined when the command doesn't name a workspace */
function wantedBy(args: readonly string[]): Wanted | undefined {
  const options = { workspace: { type: 'string' }, yes: { type: 'boolean' } } as const;
  try {
    const { workspace, yes = false } = parseArgs({ args: [...args], options }).values;
    return workspace ? { workspaceId: workspace, isSure: yes } : undefined;
  } catch {
    return undefined;
  }
}

async function askOnTerminal(question: string): Promise<string> {
  const terminal = createInterface({ input: process.stdin, output: process.stderr });
  try {
    return await terminal.question(question);
  } finally {
    terminal.close();
  }
}

export async function forget(
  args: readonly string[],
  environment: Environment,
  ask: Ask = process.stdin.isTTY ? askOnTerminal : undefined,
): Promise<CommandResult> {
  const wanted = wantedBy(args);
  if (!wanted || (!wanted.isSure && !ask)) return { code: 2, stderr: say('operator-forget-usage') };
  return runCommand(environment, (config) => onDatabase(config, (database) => run(database, wanted, ask)));
}
