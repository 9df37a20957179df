/** Finds conversations for a call and checks that the bot may do there what it wants to do. */
import type { Stage } from '../stage.ts';
import type { Conversation } from '../workspace.ts';
import { ApiFailure } from './api-method.ts';

/** @throws ApiFailure `missing_scope`, telling which one */
export function requireScope(stage: Stage, scope: string): void {
  if (stage.scopes.has(scope)) return;
  throw new ApiFailure('missing_scope', [], { needed: scope, provided: [...stage.scopes].join(',') });
}

/** `read` or `history` scope by kind of conversation: `channels:read`, `groups:read`, `im:read`. */
export function scopeFor(conversation: Conversation, what: 'read' | 'history'): string {
  const family = conversation.kind === 'dm' ? 'im' : conversation.isPrivate ? 'groups' : 'channels';
  return `${family}:${what}`;
}

/** A conversation by its id that the bot can know of. @throws ApiFailure `channel_not_found` */
export function conversationOf(stage: Stage, id: string): Conversation {
  const found = stage.workspace.conversations.get(id);
  const hidden = found?.isPrivate && !found.memberIds.has(stage.workspace.bot.id);
  if (!found || hidden) throw new ApiFailure('channel_not_found');
  return found;
}

/** As `conversationOf`, and the id of a person opens the direct message with them. */
export function targetOf(stage: Stage, id: string): Conversation {
  const person = stage.workspace.people.get(id);
  if (person?.deleted) throw new ApiFailure('user_disabled');
  return (person && stage.workspace.dmOf(id)) ?? conversationOf(stage, id);
}

/** @throws ApiFailure `is_archived` or `not_in_channel` */
export function requirePosting(stage: Stage, conversation: Conversation): void {
  if (conversation.isArchived) throw new ApiFailure('is_archived');
  const invited = conversation.memberIds.has(stage.workspace.bot.id);
  if (!invited && !stage.scopes.has('chat:write.public')) throw new ApiFailure('not_in_channel');
}
