/**
 * Workspaces that removed the bot: the platform says so by an event, and by refusing the token. Must not undo an
 * installation that was made since.
 */

import type { AnyMiddlewareArgs, Middleware } from '@slack/bolt';
import { WebAPIPlatformError } from '@slack/web-api';
import type { AppDependencies } from '../../app/ports/app-dependencies.ts';
import { recordRemoval } from '../../app/workspaces/keep-installation.ts';
import { openedToken, type TokenKeys } from '../../app/workspaces/token-keys.ts';
import type { Logger } from '../../logger.ts';
import { removalEvent } from '../door/incoming.ts';
import { interactiveClient, type WebClientSettings } from '../sending/web-clients.ts';
import { workspaceIdOf } from './workspace-of.ts';
import { VOID_TOKEN_CODES, type VoidTokenOutcome } from './workspaces.ts';

interface RemovalsOptions {
  readonly ports: Pick<AppDependencies, 'store' | 'clock'>;
  readonly keys: TokenKeys;
  readonly clientSettings: Omit<WebClientSettings, 'botToken'>;
  readonly logger: Logger;
}

export interface Removals {
  /** The platform says that the bot was removed. It may say so late, or again. */
  wasRemoved(workspaceId: string): Promise<void>;
  /** The platform refused this token. */
  tokenIsVoid(workspaceId: string, botToken: string): Promise<VoidTokenOutcome>;
}

export function createRemovals({ ports, keys, clientSettings, logger }: RemovalsOptions): Removals {
  const installationOf = (workspaceId: string) =>
    ports.store.read((read) => read.installationOf(workspaceId));

  /**
   * Whether the platform refuses it, having said that the bot was removed; in doubt it does not. One that can't be read
   * serves nobody.
   */
  async function isRefused(botToken: string | undefined): Promise<boolean> {
    if (botToken === undefined) return true;
    try {
      await interactiveClient({ ...clientSettings, botToken }).auth.test();
      return false;
    } catch (error) {
      const code = error instanceof WebAPIPlatformError ? error.data.error : undefined;
      return code !== undefined && (VOID_TOKEN_CODES.has(code) || code === 'invalid_auth');
    }
  }

  return {
    async wasRemoved(workspaceId) {
      const installation = await installationOf(workspaceId);
      if (!installation?.token) return;
      const { token } = installation;
      // No clock tells whether the message is older than the present installation: the token itself does.
      if (!(await isRefused(openedToken(keys, workspaceId, token)))) {
        logger.info('A removal was passed over: the platform still takes the token.');
        return;
      }
      if (await recordRemoval(ports, workspaceId, token)) {
        logger.info('A workspace removed the bot; its token is erased and its posts wait.');
      }
    },

    async tokenIsVoid(workspaceId, botToken) {
      const installation = await installationOf(workspaceId);
      if (!installation?.token) return 'removed';
      const { token } = installation;
      if (openedToken(keys, workspaceId, token) !== botToken) return 'renewed';
      if (!(await recordRemoval(ports, workspaceId, token))) return 'renewed';
      logger.warn('The platform refuses the token of a workspace; it is erased, and posts wait.');
      return 'removed';
    },
  };
}

/** Hears that a workspace removed the bot, or took its token back. Goes before the listeners: they need a token. */
export function removalEvents(removals: Removals): Middleware<AnyMiddlewareArgs> {
  return async ({ body, next }) => {
    const sent = removalEvent.safeParse(body);
    if (!sent.success) return next();
    const { event } = sent.data;
    const workspaceId = workspaceIdOf(body);
    // Tokens of people are of no use here, so the bot has none that could be taken back.
    if (event.type === 'tokens_revoked' && event.tokens.bot.length === 0) return;
    if (workspaceId !== undefined) await removals.wasRemoved(workspaceId);
  };
}
