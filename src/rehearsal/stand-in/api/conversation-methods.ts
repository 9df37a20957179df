/** `conversations.*`: where people talk, and what was said. docs.slack.dev/reference/methods */

import { messageJson } from '../message-json.ts';
import type { JsonObject } from '../page-state.ts';
import type { Stage } from '../stage.ts';
import type { Conversation } from '../workspace.ts';
import { type ApiArgs, ApiFailure, type ApiMethods, pageOf } from './api-method.ts';
import { conversationOf, requireScope, scopeFor } from './conversation-access.ts';

export const conversationMethods: ApiMethods = {
  'conversations.info': {
    tier: 3,
    answer(args, stage) {
      const conversation = readable(args, stage);
      const count = args.flag('include_num_members') ? { num_members: conversation.memberIds.size } : {};
      return { channel: { ...conversationJson(conversation, stage), ...count } };
    },
  },

  'conversations.members': {
    tier: 4,
    answer(args, stage) {
      const page = pageOf([...readable(args, stage).memberIds], (id) => id, args);
      return { members: page.items, response_metadata: { next_cursor: page.nextCursor } };
    },
  },

  'conversations.open': {
    tier: 3,
    scope: 'im:write',
    answer(args, stage) {
      const channelId = args.text('channel');
      const userIds = (args.text('users') ?? '').split(',').filter((id) => id !== '');
      if (channelId === undefined && userIds.length === 0) throw new ApiFailure('users_list_not_supplied');
      if (userIds.length > 1) {
        throw new ApiFailure('invalid_arguments', ['a rehearsal has no direct messages of several people']);
      }
      const conversation = channelId ? conversationOf(stage, channelId) : dmWith(stage, userIds[0] ?? '');
      if (conversation.kind !== 'dm') throw new ApiFailure('method_not_supported_for_channel_type');
      const full = args.flag('return_im');
      return { channel: full ? conversationJson(conversation, stage) : { id: conversation.id } };
    },
  },

  'conversations.history': {
    tier: 3,
    answer(args, stage) {
      const conversation = conversationOf(stage, args.requiredText('channel'));
      requireScope(stage, scopeFor(conversation, 'history'));
      if (!conversation.memberIds.has(stage.workspace.bot.id)) throw new ApiFailure('not_in_channel');
      const oldest = moment(args, 'oldest', Number.NEGATIVE_INFINITY);
      const latest = moment(args, 'latest', Number.POSITIVE_INFINITY);
      const inclusive = args.flag('inclusive');
      const within = stage.log.of(conversation.id).filter((message) => {
        const at = micros(message.ts);
        return (at > oldest && at < latest) || (inclusive && (at === oldest || at === latest));
      });
      const page = pageOf(within.reverse(), (message) => message.ts, args);
      const metadata = args.flag('include_all_metadata');
      return {
        messages: page.items.map((message) => messageJson(message, stage, { metadata })),
        has_more: page.nextCursor !== '',
        pin_count: 0,
        response_metadata: { next_cursor: page.nextCursor },
      };
    },
  },
};

function readable(args: ApiArgs, stage: Stage): Conversation {
  const conversation = conversationOf(stage, args.requiredText('channel'));
  requireScope(stage, scopeFor(conversation, 'read'));
  return conversation;
}

function dmWith(stage: Stage, userId: string): Conversation {
  const person = stage.workspace.people.get(userId);
  if (!person) throw new ApiFailure('user_not_found');
  if (person.deleted) throw new ApiFailure('user_disabled');
  const dm = stage.workspace.dmOf(userId);
  if (!dm) throw new ApiFailure('cannot_dm_bot');
  return dm;
}

/** Timestamps as whole microseconds, so that equal ones compare equal. */
function micros(ts: string): number {
  const [seconds = '0', fraction = ''] = ts.split('.');
  return Number(seconds) * 1_000_000 + Number(fraction.padEnd(6, '0').slice(0, 6));
}

function moment(args: ApiArgs, name: 'oldest' | 'latest', absent: number): number {
  const given = args.text(name);
  if (given === undefined || given === '') return absent;
  if (!/^\d+(\.\d+)?$/.test(given)) throw new ApiFailure(`invalid_ts_${name}`);
  return micros(given);
}

function conversationJson(conversation: Conversation, stage: Stage): JsonObject {
  const common = { id: conversation.id, created: 0, is_archived: conversation.isArchived };
  if (conversation.kind === 'dm') return { ...common, is_im: true, user: conversation.partnerId };
  return {
    ...common,
    name: conversation.name,
    name_normalized: conversation.name,
    is_channel: !conversation.isPrivate,
    is_group: conversation.isPrivate,
    is_im: false,
    is_mpim: false,
    is_private: conversation.isPrivate,
    is_general: false,
    is_member: conversation.memberIds.has(stage.workspace.bot.id),
    topic: { value: '', creator: '', last_set: 0 },
    purpose: { value: '', creator: '', last_set: 0 },
  };
}
