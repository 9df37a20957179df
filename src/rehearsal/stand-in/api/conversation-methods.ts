/** `conversations.*`: where people talk, and what was said. docs.slack.dev/reference/methods */

import { messageJson } from '../message-json.ts';
import type { Message } from '../message-log.ts';
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

/** Messages a page for an app that is sold outside the platform's marketplace (docs.slack.dev/apis/web-api/rate-limits). */
const RESTRICTED_PAGE = 15;

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
      const channelId = args.text('channel');
      const userIds = (args.text('users') ?? '').split(',').filter((id) => id !== '');
      if (channelId === undefined && userIds.length === 0) throw new ApiFailure('users_list_not_supplied');
      if (userIds.length > 1) {
        throw new ApiFailure('invalid_arguments', ['a rehearsal has no direct messages of several people']);
      }
      const conversation = channelId ? conversationOf(stage, channelId) : dmWith(stage, userIds[0] ?? '');
      if (conversation.kind !== 'dm') throw new ApiFailure('method_not_supported_for_channel_type');
      const opened = conversation.isOpen ? { no_op: true, already_open: true } : {};
      conversation.isOpen = true;
      const full = args.flag('return_im');
      return { ...opened, channel: full ? conversationJson(conversation, stage) : { id: conversation.id } };
    },
  },

  'conversations.join': {
    tier: 3,
    scope: 'channels:join',
    answer(args, stage) {
      const conversation = stage.workspace.conversations.get(args.requiredText('channel'));
      if (!conversation) throw new ApiFailure('channel_not_found');
      if (conversation.isPrivate) throw new ApiFailure('method_not_supported_for_channel_type');
      if (conversation.isArchived) throw new ApiFailure('is_archived');
      const { memberIds } = conversation;
      const warning = memberIds.has(stage.workspace.bot.id) ? 'already_in_channel' : undefined;
      memberIds.add(stage.workspace.bot.id);
      return {
        channel: conversationJson(conversation, stage),
        ...(warning ? { warning, response_metadata: { warnings: [warning] } } : {}),
      };
    },
  },

  'conversations.history': {
    tier: 'history',
    answer(args, stage) {
      const conversation = joined(args, stage);
      const oldest = moment(args, 'oldest', Number.NEGATIVE_INFINITY);
      const latest = moment(args, 'latest', Number.POSITIVE_INFINITY);
      const inclusive = args.flag('inclusive');
      const within = stage.log.of(conversation.id).filter((message) => {
        // Replies are read by conversations.replies.
        if (message.threadTs !== undefined) return false;
        const at = micros(message.ts);
        return (at > oldest && at < latest) || (inclusive && (at === oldest || at === latest));
      });
      return messagesPage(within.reverse(), args, stage, {});
    },
  },

  'conversations.replies': {
    tier: 'history',
    answer(args, stage) {
      const conversation = joined(args, stage);
      const asked = stage.log.find(conversation.id, args.requiredText('ts'));
      if (!asked) throw new ApiFailure('thread_not_found');
      const firstTs = asked.threadTs ?? asked.ts;
      const thread = stage.log
        .of(conversation.id)
        .filter((message) => (message.threadTs ?? message.ts) === firstTs);
      return messagesPage(thread, args, stage, { absent: 1000, most: 1000 });
    },
  },
};

/** A conversation whose messages the bot may read. */
function joined(args: ApiArgs, stage: Stage): Conversation {
  const conversation = conversationOf(stage, args.requiredText('channel'));
  requireScope(stage, scopeFor(conversation, 'history'));
  if (!conversation.memberIds.has(stage.workspace.bot.id)) throw new ApiFailure('not_in_channel');
  return conversation;
}

/** Without `include_all_metadata` only the type of metadata is told. */
function messagesPage(
  messages: readonly Message[],
  args: ApiArgs,
  stage: Stage,
  sizes: { absent?: number; most?: number },
): JsonObject {
  const page = pageOf(messages, (message) => message.ts, args, {
    ...sizes,
    ...(stage.options.isHistoryRestricted ? { most: RESTRICTED_PAGE } : {}),
  });
  const metadata = args.flag('include_all_metadata') ? 'whole' : 'type';
  return {
    messages: page.items.map((message) => messageJson(message, stage, { metadata })),
    has_more: page.nextCursor !== '',
    response_metadata: { next_cursor: page.nextCursor },
  };
}

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
  if (!given) return absent;
  if (!/^\d+(\.\d+)?$/.test(given)) throw new ApiFailure(`invalid_ts_${name}`);
  return micros(given);
}

function conversationJson(conversation: Conversation, stage: Stage): JsonObject {
  const common = {
    id: conversation.id,
    created: 0,
    updated: 0,
    is_archived: conversation.isArchived,
    is_org_shared: false,
    context_team_id: stage.workspace.teamId,
  };
  if (conversation.kind === 'dm') {
    const { isOpen, partnerId } = conversation;
    return { ...common, is_im: true, is_open: isOpen, user: partnerId, priority: 0 };
  }
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
    is_shared: conversation.isShared,
    is_ext_shared: conversation.isShared,
    is_pending_ext_shared: false,
    shared_team_ids: [stage.workspace.teamId],
    pending_shared: [],
    pending_connected_team_ids: [],
    previous_names: [],
    creator: [...conversation.memberIds][0] ?? stage.workspace.bot.id,
    unlinked: 0,
    is_member: conversation.memberIds.has(stage.workspace.bot.id),
    topic: { value: '', creator: '', last_set: 0 },
    purpose: { value: '', creator: '', last_set: 0 },
  };
}
