/**
 * The `own-record` command: how the two models of a running sprint would have done on the sprints that this installation
 * has seen, all teams together. It compares models, never teams. With a data folder the bot must be stopped, since only one
 * process may have it open.
 */
import { LEAST_CONTEST_SPRINTS, ONLY_TEACH, ownRecord } from '../app/history/own-record.ts';
import type { Database } from '../store/database.ts';
import { allWatchedSprints } from '../store/queries/watched-sprint-queries.ts';
import { say } from '../words/say.ts';
import { type CommandResult, type Environment, onDatabase, runCommand } from './operator-command.ts';

function inTenths(points: number): number {
  return Math.round(points * 10) / 10;
}

async function run(database: Database, isJson: boolean): Promise<string> {
  const scores = ownRecord(await allWatchedSprints(database.session));
  if (isJson) return JSON.stringify({ own: scores }, undefined, 2);
  if (scores.length === 0) return say('operator-own-none', { sprints: ONLY_TEACH });
  return [
    say('operator-own-lead', { sprints: ONLY_TEACH, needed: LEAST_CONTEST_SPRINTS }),
    ...scores.map(({ elapsedPercent, scored, sums, cards, nearer }) =>
      say('operator-own-line', {
        share: elapsedPercent / 100,
        scored,
        sumsError: inTenths(sums.meanAbsoluteError),
        cardsError: inTenths(cards.meanAbsoluteError),
        sumsHeld: sums.coverage80,
        cardsHeld: cards.coverage80,
        nearer,
      }),
    ),
  ].join('\n');
}

export async function scoreOwnRecord(
  args: readonly string[],
  environment: Environment,
): Promise<CommandResult> {
  if (args.some((word) => word !== '--json')) return { code: 2, stderr: say('operator-own-usage') };
  return runCommand(environment, (config) =>
    onDatabase(config, (database) => run(database, args.includes('--json'))),
  );
}
