/** `chat.*`: posting and changing messages. docs.slack.dev/reference/methods */

import { messageJson } from '../message-json.ts';
import { ApiFailure, type ApiMethods, conversationOf, requirePosting, targetOf } from './api-method.ts';
import { messageContent } from './message-content.ts';

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
      // Ephemeral messages can't be reached, nor can a person's id be used for the conversation.
      const conversation = conversationOf(stage, args.requiredText('channel'));
      const message = stage.log.find(conversation.id, args.requiredText('ts'));
      if (!message || message.ephemeralFor !== undefined) throw new ApiFailure('message_not_found');
      if (message.userId !== stage.workspace.bot.id) throw new ApiFailure('cant_update_message');
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
};
