/**
 * All workspaces that installed the bot. The database says at every turn who is installed and with which token, so that
 * no replica works with an old one; only clients are kept in memory, and no more than so many. Must not keep a token
 * whose workspace removed the bot.
 */
import type { WebClient } from '@slack/web-api';
import type { Store } from '../../app/ports/store.ts';
import type { TokenKeys } from '../../app/workspaces/token-keys.ts';
import { bulkClient, interactiveClient, type WebClientSettings } from '../sending/web-clients.ts';
import type { Removals } from './removals.ts';
import type { ConnectedWorkspace, Workspaces } from './workspaces.ts';

/** A client takes some 25 kB (measured), and is made in a few milliseconds. */
const KEPT_WORKSPACES = 500;

export interface InstalledWorkspacesOptions {
  readonly store: Store;
  readonly keys: TokenKeys;
  readonly removals: Pick<Removals, 'tokenIsVoid'>;
  readonly clientSettings: Omit<WebClientSettings, 'botToken'>;
  readonly keptWorkspaces?: number;
}

export function installedWorkspaces(options: InstalledWorkspacesOptions): Workspaces {
  const { store, keys, removals, clientSettings, keptWorkspaces = KEPT_WORKSPACES } = options;
  /** In order of their last use. */
  const kept = new Map<string, { readonly sealed: string; readonly workspace: ConnectedWorkspace }>();

  return {
    async find(workspaceId) {
      const installation = await store.read((read) => read.installationOf(workspaceId));
      const known = kept.get(workspaceId);
      kept.delete(workspaceId);
      if (!installation?.token) return undefined;
      const { token, botUserId } = installation;
      const isSame = known?.sealed === token.sealed;
      const workspace = isSame
        ? known.workspace
        : connect(workspaceId, botUserId, keys.open(workspaceId, token));
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
