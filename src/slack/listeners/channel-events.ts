/** What happens to channels: they are archived, deleted or shared, the bot is taken out of them, or they get another id. */
import type { App } from '@slack/bolt';
import type { ChannelChange } from '../../app/team/watch-channel.ts';
import { CHANNEL_CLOSED_EVENTS, CHANNEL_EVENTS, channelEvent } from '../door/incoming.ts';
import { contextOf } from './listener-context.ts';

export function listenToChannels(app: App): void {
  for (const type of CHANNEL_EVENTS) {
    app.event(type, async ({ body, context: bolt }) => {
      const sent = channelEvent.safeParse(body);
      if (!sent.success) return;
      const { logger, watchChannel } = contextOf(bolt);
      const { event } = sent.data;
      await watchChannel(changeOf(event));
      logger.info({ during: event.type }, 'A channel changed.');
    });
  }
}

function changeOf(event: ReturnType<typeof channelEvent.parse>['event']): ChannelChange {
  if (event.type === 'channel_id_changed')
    return { kind: 'new-id', channelId: event.old_channel_id, newChannelId: event.new_channel_id };
  if (event.type === 'channel_shared') return { kind: 'shared', channelId: event.channel };
  if (event.type === 'channel_unshared') return { kind: 'unshared', channelId: event.channel };
  const isClosed = CHANNEL_CLOSED_EVENTS.some((type) => type === event.type);
  return { kind: isClosed ? 'closed' : 'bot-left', channelId: event.channel };
}
