import type { Messages } from '../../words/message-arguments.ts';

/** What the bot asks of a workspace, and what for; the app manifest asks for exactly these. */
export const NEEDED_SCOPES = {
  'chat:write': 'post',
  'chat:write.public': 'post-public',
  'im:write': 'direct',
  'im:history': 'read-direct',
  'channels:read': 'see-channels',
  'channels:history': 'read-channels',
  'groups:read': 'see-groups',
  'groups:history': 'read-groups',
  commands: 'command',
  'files:write': 'upload',
  'files:read': 'download',
  'users:read': 'people',
} as const satisfies Record<string, Messages['start-scope-missing']['use']>;

export type NeededScope = keyof typeof NEEDED_SCOPES;
