/** `chat.*`: posting, changing and deleting messages. docs.slack.dev/reference/methods */

import { messageJson } from '../message-json.ts';
import type { Message } from '../message-log.ts';
import { changedMessageEvent, messageEvent } from '../payloads.ts';
import type { Stage } from '../stage.ts';
import type { Conversation } from '../workspace.ts';
import {
  type ApiArgs,
  ApiFailure,
  type ApiMethods,
  conversationOf,
  requirePosting,
  targetOf,
} from './api-method.ts';
import { messageContent, metadataOf, POSTED_TEXT_MAX, shortMessageContent } from './message-content.ts';

export const chatMethods: ApiMethods = {
  'chat.postMessage': {
    tier: 'post',
    scope: 'chat:write',
    limitedChannel(args, stage) {
      const id = args.text('channel') ?? '';
      return stage.workspace.dmOf(id)?.id ?? id;
    },
    answer(args, stage) {
      const conversation = targetOf(stage, args.requiredText('channel'));
      const content = messageContent(args, stage);
      requirePosting(stage, conversation, content.threadTs);
      const message = stage.log.add({
        ...content,
        text: content.text.slice(0, POSTED_TEXT_MAX),
        channelId: conversation.id,
        userId: stage.workspace.bot.id,
        byBot: true,
      });
      if (hearsOf(conversation, stage)) stage.announce(messageEvent(stage, message, conversation));
      stage.changed();
      return {
        channel: conversation.id,
        ts: message.ts,
        message: messageJson(message, stage, { metadata: 'whole' }),
      };
    },
  },

  'chat.postEphemeral': {
    tier: 4,
    scope: 'chat:write',
    answer(args, stage) {
      const conversation = conversationOf(stage, args.requiredText('channel'));
      const userId = args.requiredText('user');
      if (conversation.isArchived) throw new ApiFailure('is_archived');
      if (!conversation.memberIds.has(stage.workspace.bot.id)) throw new ApiFailure('not_in_channel');
      if (!conversation.memberIds.has(userId)) throw new ApiFailure('user_not_in_channel');
      const { text, blocks, threadTs } = shortMessageContent(args, stage);
      const by = { userId: stage.workspace.bot.id, byBot: true };
      const message = stage.log.add({
        text,
        blocks,
        ...by,
        channelId: conversation.id,
        ephemeralFor: userId,
        ...(threadTs === undefined ? {} : { threadTs }),
      });
      // In a thread without replies nobody sees it, and the answer doesn't say so.
      if (threadTs !== undefined && stage.log.repliesTo(conversation.id, threadTs).length === 0)
        message.deleted = true;
      stage.changed();
      return { message_ts: message.ts };
    },
  },

  'chat.update': {
    tier: 3,
    scope: 'chat:write',
    answer(args, stage) {
      const message = ownMessage(args, stage, 'cant_update_message');
      const ageMs = stage.options.now().getTime() - Number(message.ts) * 1000;
      if (ageMs > (stage.options.editWindowMs ?? Number.POSITIVE_INFINITY))
        throw new ApiFailure('edit_window_closed');
      // Text without blocks takes the blocks away, neither leaves both; metadata that is left out stays.
      const metadata = metadataOf(args);
      const kept = { text: message.text, blocks: message.blocks, ...(metadata ? { metadata } : {}) };
      const saysMore = args.has('text') || args.has('blocks');
      const previous = messageJson(message, stage);
      stage.log.change(message, saysMore ? shortMessageContent(args, stage) : kept);
      const place = conversationOf(stage, message.channelId);
      if (hearsOf(place, stage)) stage.announce(changedMessageEvent(stage, message, place, previous));
      stage.changed();
      const { ts: _ts, ...described } = messageJson(message, stage, { metadata: 'whole' });
      return {
        channel: message.channelId,
        ts: message.ts,
        text: message.text,
        message: described,
      };
    },
  },

  'chat.getPermalink': {
    tier: 4,
    answer(args, stage) {
      const conversation = conversationOf(stage, args.requiredText('channel'));
      const message = stage.log.find(conversation.id, args.requiredText('message_ts'));
      if (!message || message.ephemeralFor !== undefined) throw new ApiFailure('message_not_found');
      const { id: channel } = conversation;
      const path = `archives/${channel}/p${message.ts.replace('.', '')}`;
      const { threadTs: thread_ts } = message;
      const query = thread_ts === undefined ? '' : `?${new URLSearchParams({ thread_ts, cid: channel })}`;
      return { channel, permalink: `https://${stage.workspace.teamDomain}.slack.com/${path}${query}` };
    },
  },

  'chat.delete': {
    tier: 3,
    scope: 'chat:write',
    answer(args, stage) {
      const message = ownMessage(args, stage, 'cant_delete_message');
      stage.log.delete(message);
      stage.changed();
      return { channel: message.channelId, ts: message.ts };
    },
  },
};

/** Ephemeral messages can't be reached by these calls, nor can a person's id be used for the conversation. */
function ownMessage(args: ApiArgs, stage: Stage, notOwn: string): Message {
  const conversation = conversationOf(stage, args.requiredText('channel'));
  const message = stage.log.find(conversation.id, args.requiredText('ts'));
  // What deleting says in an archive is not documented.
  if (conversation.isArchived && notOwn === 'cant_update_message') throw new ApiFailure('is_inactive');
  if (!message || message.ephemeralFor !== undefined) throw new ApiFailure('message_not_found');
  if (message.userId !== stage.workspace.bot.id) throw new ApiFailure(notOwn);
  return message;
}

/** The app hears of its own messages where it hears of people's: it subscribes to those of direct messages. */
function hearsOf({ kind }: Conversation, stage: Stage): boolean {
  return kind === 'dm' && stage.scopes.has('im:history');
}
