/** `chat.*`: posting, changing and deleting messages. docs.slack.dev/reference/methods */
import type { Message } from '../message-log.ts';
import type { Stage } from '../stage.ts';
import type { ApiArgs } from './api-args.ts';
import { ApiFailure } from './api-failure.ts';
import type { ApiMethods } from './api-method.ts';
import { conversationOf, requirePosting, targetOf } from './conversation-access.ts';
import { messageContent } from './message-content.ts';
import { messageJson } from './message-json.ts';

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
      requirePosting(stage, conversation);
      const message = stage.log.add({
        ...messageContent(args, stage),
        channelId: conversation.id,
        userId: stage.workspace.bot.id,
        byBot: true,
      });
      stage.posted(message);
      stage.changed();
      return {
        channel: conversation.id,
        ts: message.ts,
        message: messageJson(message, stage, { metadata: true }),
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
      const { text, blocks } = messageContent(args, stage);
      const by = { userId: stage.workspace.bot.id, byBot: true };
      const message = stage.log.add({
        text,
        blocks,
        ...by,
        channelId: conversation.id,
        ephemeralFor: userId,
      });
      stage.changed();
      return { message_ts: message.ts };
    },
  },

  'chat.update': {
    tier: 3,
    scope: 'chat:write',
    answer(args, stage) {
      const message = ownMessage(args, stage, 'cant_update_message');
      // Text without blocks takes the blocks away; metadata that is left out stays.
      stage.log.change(message, messageContent(args, stage));
      stage.changed();
      return {
        channel: message.channelId,
        ts: message.ts,
        text: message.text,
        message: messageJson(message, stage, { metadata: true }),
      };
    },
  },

  'chat.delete': {
    tier: 3,
    scope: 'chat:write',
    answer(args, stage) {
      const message = ownMessage(args, stage, 'cant_delete_message');
      message.deleted = true;
      stage.changed();
      return { channel: message.channelId, ts: message.ts };
    },
  },
};

/** Ephemeral messages can't be reached by these calls, nor can a person's id be used for the conversation. */
function ownMessage(args: ApiArgs, stage: Stage, notOwn: string): Message {
  const conversation = conversationOf(stage, args.requiredText('channel'));
  const message = stage.log.find(conversation.id, args.requiredText('ts'));
  if (!message || message.ephemeralFor !== undefined) throw new ApiFailure('message_not_found');
  if (message.userId !== stage.workspace.bot.id) throw new ApiFailure(notOwn);
  return message;
}
