/** What an app's manifest must hold for the bot to work; `deploy/app-manifest.json` holds it. */
import type { Messages } from '../../words/message-arguments.ts';
import { CHANNEL_EVENTS } from '../door/incoming.ts';

/** What the bot asks of a workspace, and what for; the app manifest asks for exactly these. */
export const NEEDED_SCOPES = {
  'chat:write': 'post',
  'chat:write.public': 'post-public',
  'app_mentions:read': 'mentions',
  'im:write': 'direct',
  'im:history': 'read-direct',
  'channels:read': 'see-channels',
  'channels:history': 'read-channels',
  'channels:join': 'join-channels',
  'groups:read': 'see-groups',
  'groups:history': 'read-groups',
  commands: 'command',
  'files:write': 'upload',
  'files:read': 'download',
  'users:read': 'people',
} as const satisfies Record<string, Messages['start-scope-missing']['use']>;

export type NeededScope = keyof typeof NEEDED_SCOPES;

/** An app that was made before the bot asked for them works without, though worse. */
export const DISPENSABLE_SCOPES: ReadonlySet<NeededScope> = new Set(['app_mentions:read', 'channels:join']);

/** What the listeners listen to. */
export const NEEDED_EVENTS = ['app_home_opened', 'message.im', 'app_mention', ...CHANNEL_EVENTS] as const;

/** What it listens to besides where workspaces install it by themselves. */
export const DISTRIBUTION_EVENTS = ['app_uninstalled', 'tokens_revoked'] as const;
