/** `conversations.*`: where people talk, and what was said. docs.slack.dev/reference/methods */

import { messageJson } from '../message-json.ts';
import type { JsonObject } from '../page-state.ts';
import type { Stage } from '../stage.ts';
import type { Conversation } from '../workspace.ts';
import {
  type ApiArgs,
  ApiFailure,
  type ApiMethods,
  conversationOf,
  pageOf,
  requireScope,
  scopeFor,
} from './api-method.ts';

export const conversationMethods: ApiMethods = {
  'conversations.info': {
    tier: 3,
    answer(args, stage) {
      return { channel: conversationJson(readable(args, stage), stage) };
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
      return { channel: { id: dmWith(stage, args.requiredText('users')).id } };
    },
  },

  'conversations.history': {
    tier: 3,
    answer(args, stage) {
      const conversation = conversationOf(stage, args.requiredText('channel'));
      requireScope(stage, scopeFor(conversation, 'history'));
      if (!conversation.memberIds.has(stage.workspace.bot.id)) throw new ApiFailure('not_in_channel');
      const oldest = oldestOf(args);
      const inclusive = args.flag('inclusive');
      const within = stage.log.of(conversation.id).filter((message) => {
        const at = micros(message.ts);
        return at > oldest || (inclusive && at === oldest);
      });
      const page = pageOf(within.reverse(), (message) => message.ts, args);
      const metadata = args.flag('include_all_metadata');
      return {
        messages: page.items.map((message) => messageJson(message, stage, { metadata })),
        has_more: page.nextCursor !== '',
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

function oldestOf(args: ApiArgs): number {
  const given = args.text('oldest');
  if (!given) return Number.NEGATIVE_INFINITY;
  if (!/^\d+(\.\d+)?$/.test(given)) throw new ApiFailure('invalid_ts_oldest');
  return micros(given);
}

function conversationJson(conversation: Conversation, stage: Stage): JsonObject {
  const common = { id: conversation.id, is_archived: conversation.isArchived };
  if (conversation.kind === 'dm') return { ...common, is_im: true, user: conversation.partnerId };
  return {
    ...common,
    name: conversation.name,
    is_im: false,
    is_private: conversation.isPrivate,
    is_member: conversation.memberIds.has(stage.workspace.bot.id),
  };
}
