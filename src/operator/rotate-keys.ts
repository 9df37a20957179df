/**
 * The `rotate-keys` command: encrypts the tokens of all workspaces with the first key of LOADLINE_TOKEN_KEYS, so that
 * the former keys can be taken out. The bot may run meanwhile, except with a data folder, which only one process may
 * have open.
 */
import { rotateTokenKeys, tokenKeyProblems } from '../app/workspaces/check-token-keys.ts';
import { tokenKeys } from '../app/workspaces/token-keys.ts';
import { CommandRefused, onDatabase, runCommand } from './operator-command.ts';

await runCommand(async (config) => {
  const { access } = config;
  if (access.kind !== 'many-workspaces') {
    throw new CommandRefused('There are no keys to rotate: LOADLINE_TOKEN_KEYS is not set.');
  }
  const keys = tokenKeys(access.tokenKeys);
  return onDatabase(config, async ({ store }) => {
    const problems = await tokenKeyProblems(store, keys);
    if (problems.length > 0) throw new CommandRefused(problems.join('\n'));
    const moved = await rotateTokenKeys(store, keys);
    return `Tokens encrypted anew: ${moved}. All are under the key ${keys.sealingKeyName} now.`;
  });
});
