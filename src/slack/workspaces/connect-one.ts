/** Connects the bot with the one workspace whose token is in the settings. */
import type { Store } from '../../app/ports/store.ts';
import type { Config } from '../../config.ts';
import type { Logger } from '../../logger.ts';
import { bulkClient, interactiveClient } from '../sending/web-clients.ts';
import { checkPlatform } from './check-platform.ts';
import { type Connection, ConnectionRefused } from './connection.ts';
import { oneWorkspace } from './workspaces.ts';

/** @throws ConnectionRefused when the token or its scopes don't serve */
export async function connectOne(
  botToken: string,
  { apiUrl }: Pick<Config, 'apiUrl'>,
  logger: Logger,
): Promise<Connection & { readonly workspaceId: string }> {
  const settings = { botToken, logger, slackApiUrl: apiUrl };
  const interactive = interactiveClient(settings);
  const checked = await checkPlatform(interactive);
  if (!checked.ok) throw new ConnectionRefused(checked.problems);
  const { workspaceId, workspaceName, botUserId } = checked.identity;
  const bulk = bulkClient(settings);
  const workspaces = oneWorkspace({ workspaceId, botUserId, botToken, interactive, bulk });
  return {
    workspaces,
    bulkWorkspaces: workspaces,
    distribution: undefined,
    workspaceId,
    workspaceName,
  };
}

/**
 * A database that served many workspaces may remember that this one had removed the bot. The token in the settings says
 * otherwise: clocks go on, and what waited is sent.
 */
export async function endFormerInstallation(store: Store, workspaceId: string): Promise<void> {
  await store.transaction(async (tx) => {
    if (await tx.write.installations.forget(workspaceId)) await tx.write.posts.queueAllOf(workspaceId);
  });
}
