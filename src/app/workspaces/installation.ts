/** A workspace's installation of the bot, as it is kept when one bot serves many workspaces; and which of them it serves. */

/** A bot token, encrypted; only with the key of that name can it be opened. */
export interface SealedToken {
  readonly sealed: string;
  readonly keyName: string;
}

export interface Installation {
  readonly workspaceId: string;
  readonly workspaceName: string;
  /** The organisation that the workspace belongs to, if any. */
  readonly enterpriseId: string | undefined;
  readonly botUserId: string;
  readonly botId: string;
  /** Undefined after the workspace removed the bot. */
  readonly token: SealedToken | undefined;
  readonly scopes: readonly string[];
  /** Who installed it; undefined when the platform does not say, and once that person is forgotten. */
  readonly installedBy: string | undefined;
  readonly installedAt: Date;
  /** When the bot was removed; undefined while it is installed. */
  readonly revokedAt: Date | undefined;
}

/** Ids of workspaces, and of organisations with all of theirs; `*`: any. */
export type AllowedWorkspaces = '*' | readonly string[];

/** Whether the bot serves it. */
export function isAllowed(
  allowed: AllowedWorkspaces,
  { workspaceId, enterpriseId }: Pick<Installation, 'workspaceId' | 'enterpriseId'>,
): boolean {
  if (allowed === '*') return true;
  return allowed.includes(workspaceId) || (enterpriseId !== undefined && allowed.includes(enterpriseId));
}
