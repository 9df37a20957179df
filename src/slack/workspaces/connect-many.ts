/** Connects the bot with all workspaces that installed it, and lets others install it. */
import type { AppDependencies } from '../../app/ports/app-dependencies.ts';
import type { Store } from '../../app/ports/store.ts';
import { tokenKeyProblems } from '../../app/workspaces/check-token-keys.ts';
import { tokenKeys } from '../../app/workspaces/token-keys.ts';
import type { Config, Distribution } from '../../config.ts';
import type { Logger } from '../../logger.ts';
import { notInstalledMessage } from '../views/not-installed-message.ts';
import { type Connection, ConnectionRefused } from './connection.ts';
import { INSTALL_PATH, installPages } from './install-pages.ts';
import { installedWorkspaces } from './installed-workspaces.ts';
import { createRemovals } from './removals.ts';
import type { Workspaces } from './workspaces.ts';

/** @throws ConnectionRefused when a stored token can't be read with the keys that are given */
export async function connectMany(
  distribution: Distribution,
  { apiUrl }: Pick<Config, 'apiUrl'>,
  ports: Pick<AppDependencies, 'store' | 'clock'> & { readonly bulkStore: Store },
  logger: Logger,
): Promise<Connection> {
  const keys = tokenKeys(distribution.tokenKeys);
  const problems = await tokenKeyProblems(ports.store, keys);
  if (problems.length > 0) throw new ConnectionRefused(problems);
  const clientSettings = { logger, slackApiUrl: apiUrl };
  const removals = createRemovals({ ports, keys, clientSettings, logger });
  const over = (store: Store): Workspaces => installedWorkspaces({ store, keys, removals, clientSettings });
  return {
    workspaces: over(ports.store),
    bulkWorkspaces: over(ports.bulkStore),
    distribution: {
      notInstalled: notInstalledMessage(`${distribution.publicUrl}${INSTALL_PATH}`),
      pages: installPages({ ports, keys, distribution, apiUrl, logger }),
      removals,
    },
    workspaceName: undefined,
  };
}
