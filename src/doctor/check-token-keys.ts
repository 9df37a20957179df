/** Whether the keys in the settings are those with which the tokens of workspaces are stored. Knows names only. */
import type { Access } from '../config.ts';
import { type Finding, findingsOf } from './finding.ts';

const { ok, warning, mend } = findingsOf('token keys');

/** @param storedNames names of the keys under which tokens are stored; undefined: no table for them yet */
export function checkTokenKeys(access: Access, storedNames: readonly string[] | undefined): Finding[] {
  const stored = storedNames ?? [];
  if (access.kind === 'one-workspace') {
    if (stored.length === 0) return [];
    return [
      warning(
        'The database holds tokens of workspaces, which this bot for one workspace does not use.',
        'Give the settings for many workspaces, or ignore this if only one is to be served from now on.',
      ),
    ];
  }
  const given = access.tokenKeys.map(({ name }) => name);
  const missing = stored.filter((name) => !given.includes(name));
  if (missing.length > 0) {
    return [
      mend(
        `Keys of stored tokens are missing in LOADLINE_TOKEN_KEYS: ${missing.join(', ')}.`,
        'Add them behind the others, then run npm run rotate-keys.',
      ),
    ];
  }
  const former = stored.filter((name) => name !== given[0]);
  if (former.length > 0) {
    return [
      warning(
        `Tokens are still stored under former keys: ${former.join(', ')}.`,
        'Run npm run rotate-keys; then the former keys can be taken out.',
      ),
    ];
  }
  return [ok('The keys of all stored tokens are given.')];
}
