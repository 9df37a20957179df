/** Whether the settings name the keys with which the tokens of workspaces are stored. Looks at their names only. */
import type { Access } from '../config.ts';
import type { Finding } from './finding.ts';

/** @param storedNames names of the keys with which tokens are encrypted; undefined when their table isn't there yet */
export function checkTokenKeys(access: Access, storedNames: readonly string[] | undefined): Finding[] {
  const stored = storedNames ?? [];
  if (access.kind === 'one-workspace') return stored.length === 0 ? [] : [{ code: 'tokens-unused' }];
  const given = access.tokenKeys.map(({ name }) => name);
  const missing = stored.filter((name) => !given.includes(name));
  if (missing.length > 0) return [{ code: 'keys-missing', names: missing }];
  const former = stored.filter((name) => name !== given[0]);
  return [former.length > 0 ? { code: 'keys-former', names: former } : { code: 'keys-fine' }];
}
