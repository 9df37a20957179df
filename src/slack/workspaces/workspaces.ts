/**
 * Where the bot is installed: each workspace with its own token and clients. All that reads or writes on the platform
 * gets its client here, by the workspace that it works for, so that one workspace's token never serves another.
 */
import type { WebClient } from '@slack/web-api';

export interface ConnectedWorkspace {
  readonly workspaceId: string;
  readonly botUserId: string;
  readonly botToken: string;
  /** For what a person waits for. */
  readonly interactive: WebClient;
  /** For posts. */
  readonly bulk: WebClient;
}

export interface Workspaces {
  /** Undefined: the bot is not installed there (any more). */
  find(workspaceId: string): Promise<ConnectedWorkspace | undefined>;
  /** Hears that the platform does not take the workspace's token any more. */
  tokenIsVoid(workspace: ConnectedWorkspace): Promise<VoidTokenOutcome>;
}

/**
 * What becomes of a token that the platform refused: its workspace counts as not installed from now on (`removed`), has
 * another one by now (`renewed`), or keeps it (`kept`), because somebody has to put another into the settings.
 */
export type VoidTokenOutcome = 'removed' | 'renewed' | 'kept';

/** What the platform says of a token that was taken back (docs.slack.dev/reference/methods/auth.test). */
export const VOID_TOKEN_CODES: ReadonlySet<string> = new Set(['token_revoked', 'account_inactive']);

/** A call for a workspace in which the bot is not installed. */
class NotInstalledError extends Error {
  override readonly name = 'NotInstalledError';
  readonly code = 'not-installed';

  constructor() {
    super('The bot is not installed in this workspace.');
  }
}

/** @throws NotInstalledError */
export async function connected(workspaces: Workspaces, workspaceId: string): Promise<ConnectedWorkspace> {
  const workspace = await workspaces.find(workspaceId);
  if (!workspace) throw new NotInstalledError();
  return workspace;
}

/** The one workspace whose token is in the settings. */
export function oneWorkspace(only: ConnectedWorkspace): Workspaces {
  return {
    find: async (workspaceId) => (workspaceId === only.workspaceId ? only : undefined),
    tokenIsVoid: async () => 'kept',
  };
}
