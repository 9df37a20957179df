/** Which workspaces a bot for many of them serves. */
import type { Installation } from './installation.ts';

/** Ids of workspaces, and of organisations with all of theirs; `*`: any. */
export type AllowedWorkspaces = '*' | readonly string[];

export function isAllowed(
  allowed: AllowedWorkspaces,
  { workspaceId, enterpriseId }: Pick<Installation, 'workspaceId' | 'enterpriseId'>,
): boolean {
  if (allowed === '*') return true;
  return allowed.includes(workspaceId) || (enterpriseId !== undefined && allowed.includes(enterpriseId));
}
