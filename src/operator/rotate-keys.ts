/**
 * The `rotate-keys` command: encrypts the tokens of all workspaces with the first key of LOADLINE_TOKEN_KEYS, so that
 * the former keys can be removed. The bot may go on running, except with a data folder, which only one process may
 * have open.
 */
import { checkTokenKeys, rotateTokenKeys } from '../app/workspaces/check-token-keys.ts';
import { tokenKeys } from '../app/workspaces/token-keys.ts';
import { say, sayCode } from '../words/say.ts';
import {
  CommandRefused,
  type CommandResult,
  type Environment,
  onDatabase,
  runCommand,
} from './operator-command.ts';

export function rotateKeys(_args: readonly string[], environment: Environment): Promise<CommandResult> {
  return runCommand(environment, async (config) => {
    const { access } = config;
    if (access.kind !== 'many-workspaces') throw new CommandRefused(say('operator-no-keys'));
    const keys = tokenKeys(access.tokenKeys);
    return onDatabase(config, async ({ store }) => {
      const { problems, damagedIds } = await checkTokenKeys(store, keys);
      if (problems.length > 0)
        throw new CommandRefused(problems.map((problem) => sayCode('start', problem)).join('\n'));
      const count = await rotateTokenKeys(store, keys);
      return [
        say('operator-keys-rotated', { count, key: keys.sealingKeyName }),
        ...damagedIds.map((workspaceId) => say('operator-token-damaged', { workspaceId })),
      ].join('\n');
    });
  });
}
