/** How the bot is connected to the platform: with one workspace's token, or with those of all that installed it. */

import type { WebClient } from '@slack/web-api';
import type { AppDependencies } from '../../app/ports/app-dependencies.ts';
import type { Store } from '../../app/ports/store.ts';
import { checkTokenKeys, type TokenKeyProblem } from '../../app/workspaces/check-token-keys.ts';
import { type AllowedWorkspaces, isAllowed } from '../../app/workspaces/installation.ts';
import { openedToken, type TokenKeys, tokenKeys } from '../../app/workspaces/token-keys.ts';
import type { Config, Distribution } from '../../config.ts';
import type { Logger } from '../../logger.ts';
import { bulkClient, interactiveClient, type WebClientSettings } from '../sending/web-clients.ts';
import type { MessageView } from '../views/message-view.ts';
import { notInstalledMessage } from '../views/trouble-views.ts';
import { checkPlatform, type PlatformProblem } from './check-platform.ts';
import { INSTALL_PATH, installPages, type PageRoutes } from './install-pages.ts';
import { createRemovals, type Removals } from './removals.ts';
import { type ConnectedWorkspace, oneWorkspace, type Workspaces } from './workspaces.ts';

interface Connection {
  readonly workspaces: Workspaces;
  /** The same for posts, which nobody waits for: looks them up without taking anything from requests. */
  readonly bulkWorkspaces: Workspaces;
  /** Undefined with one workspace, which nobody else can join. */
  readonly distribution: DistributionParts | undefined;
  /** For the log. */
  readonly workspaceName: string | undefined;
}

/** What belongs to the installation by workspaces themselves. */
export interface DistributionParts {
  /** What people read in a workspace without the bot. */
  readonly notInstalled: MessageView;
  readonly pages: PageRoutes;
  readonly removals: Removals;
}

/** The bot can't be connected: the token or its scopes don't serve, or stored tokens can't be read. */
export class ConnectionRefused extends Error {
  override readonly name = 'ConnectionRefused';
  readonly problems: readonly (PlatformProblem | TokenKeyProblem)[];

  constructor(problems: readonly (PlatformProblem | TokenKeyProblem)[]) {
    super(problems.map(({ code }) => code).join(', '));
    this.problems = problems;
  }
}

/**
 * Connects the bot with the one workspace whose token is in the settings.
 *
 * @throws ConnectionRefused when the token or its scopes don't serve
 */
export async function connectOne(
  botToken: string,
  { apiUrl }: Pick<Config, 'apiUrl'>,
  logger: Logger,
): Promise<Connection & { readonly workspaceId: string }> {
  const settings = { botToken, logger, slackApiUrl: apiUrl };
  const interactive = interactiveClient(settings);
  const checked = await checkPlatform(interactive);
  if (!checked.ok) throw new ConnectionRefused(checked.problems);
  for (const { scope } of checked.lacking) logger.warn({ scope }, 'a scope is missing; see npm run doctor');
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

/**
 * Connects the bot with all workspaces that installed it, and lets others install it.
 *
 * @throws ConnectionRefused when a stored token can't be read with the keys that are given
 */
export async function connectMany(
  distribution: Distribution,
  { apiUrl }: Pick<Config, 'apiUrl'>,
  ports: Pick<AppDependencies, 'store' | 'clock'> & { readonly bulkStore: Store },
  logger: Logger,
): Promise<Connection> {
  const keys = tokenKeys(distribution.tokenKeys);
  const { problems, damagedIds } = await checkTokenKeys(ports.store, keys);
  if (problems.length > 0) throw new ConnectionRefused(problems);
  for (const workspaceId of damagedIds) {
    logger.error(
      { workspaceId },
      'The stored token of a workspace is damaged; it has to install the bot again.',
    );
  }
  const clientSettings = { logger, slackApiUrl: apiUrl };
  const removals = createRemovals({ ports, keys, clientSettings, logger });
  const over = (store: Store): Workspaces =>
    installedWorkspaces({ store, keys, allowed: distribution.allowedWorkspaces, removals, clientSettings });
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

/** A client takes some 25 kB (measured), and is made in a few milliseconds. */
const KEPT_WORKSPACES = 500;

interface InstalledWorkspacesOptions {
  readonly store: Store;
  readonly keys: TokenKeys;
  readonly allowed: AllowedWorkspaces;
  readonly removals: Pick<Removals, 'tokenIsVoid'>;
  readonly clientSettings: Omit<WebClientSettings, 'botToken'>;
  readonly keptWorkspaces?: number;
}

/**
 * All workspaces that installed the bot and may use it. The database says at every turn who is installed and with which token, so that
 * no replica works with an old one; only clients are kept in memory, and no more than so many. Must not keep a token
 * whose workspace removed the bot.
 */
export function installedWorkspaces(options: InstalledWorkspacesOptions): Workspaces {
  const { store, keys, allowed, removals, clientSettings, keptWorkspaces = KEPT_WORKSPACES } = options;
  /** In order of their last use. */
  const kept = new Map<string, { readonly sealed: string; readonly workspace: ConnectedWorkspace }>();

  return {
    async find(workspaceId) {
      const installation = await store.read((read) => read.installationOf(workspaceId));
      const known = kept.get(workspaceId);
      kept.delete(workspaceId);
      if (!installation?.token || !isAllowed(allowed, installation)) return undefined;
      const { token, botUserId } = installation;
      const isSame = known?.sealed === token.sealed;
      const botToken = isSame ? known.workspace.botToken : openedToken(keys, workspaceId, token);
      if (botToken === undefined) return undefined;
      const workspace = isSame ? known.workspace : connect(workspaceId, botUserId, botToken);
      kept.set(workspaceId, { sealed: token.sealed, workspace });
      const oldest = kept.keys().next().value;
      if (kept.size > keptWorkspaces && oldest !== undefined) kept.delete(oldest);
      return workspace;
    },
    tokenIsVoid: ({ workspaceId, botToken }) => removals.tokenIsVoid(workspaceId, botToken),
  };

  function connect(workspaceId: string, botUserId: string, botToken: string): ConnectedWorkspace {
    const settings = { ...clientSettings, botToken };
    let interactive: WebClient | undefined;
    let bulk: WebClient | undefined;
    return {
      workspaceId,
      botUserId,
      botToken,
      // Made when they are asked for: requests need the one, posts the other.
      get interactive() {
        interactive ??= interactiveClient(settings);
        return interactive;
      },
      get bulk() {
        bulk ??= bulkClient(settings);
        return bulk;
      },
    };
  }
}
