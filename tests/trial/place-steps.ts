/** Channels, direct messages and people. Behaviours by their number in docs/platform.md. */
import { needed, okOf, post, type TrialStep, type TrialWorld } from './trial-step.ts';

export function placeSteps(world: TrialWorld): TrialStep[] {
  const { client, channelId, personId } = world;
  const other = () => needed(world.otherChannelId, 'LOADLINE_TRIAL_OTHER_CHANNEL names no channel');
  const hidden = () => needed(world.privateChannelId, 'LOADLINE_TRIAL_PRIVATE_CHANNEL names no channel');
  const leaver = () => needed(world.deactivatedId, 'LOADLINE_TRIAL_DEACTIVATED names nobody');
  const opened = async () => {
    const { already_open: isOpen } = await client.conversations.open({ users: personId });
    return isOpen ? 'ok, already open' : 'ok';
  };

  return [
    { what: 'auth.test', expected: ['ok'], run: () => okOf(client.auth.test()) },
    {
      what: 'auth.test with a token that was never given out',
      expected: ['invalid_auth'],
      run: () => okOf(world.stranger.auth.test()),
    },
    {
      what: 'conversations.info of the channel',
      expected: ['ok, a member'],
      run: async () => {
        const { channel } = await client.conversations.info({ channel: channelId });
        return channel?.is_member ? 'ok, a member' : 'ok, no member';
      },
    },
    {
      what: 'conversations.members of the channel',
      expected: ['ok, the person among them'],
      run: async () => {
        const { members = [] } = await client.conversations.members({ channel: channelId, limit: 999 });
        return members.includes(personId) ? 'ok, the person among them' : 'ok, without the person';
      },
    },
    {
      what: 'conversations.join of the channel that the bot is in (63)',
      expected: ['ok, already_in_channel'],
      run: async () => {
        const answer = await client.apiCall('conversations.join', { channel: channelId });
        return answer.response_metadata?.warnings?.includes('already_in_channel')
          ? 'ok, already_in_channel'
          : 'ok';
      },
    },
    {
      what: 'chat.postMessage to a public channel that the bot is not in (18)',
      expected: ['ok'],
      run: async () => {
        await post(world, { channel: other(), text: 'A trial of Loadline; this message goes away' });
        return 'ok';
      },
    },
    {
      what: 'conversations.history of that channel (18)',
      expected: ['not_in_channel'],
      run: () => okOf(client.conversations.history({ channel: other(), limit: 1 })),
    },
    {
      what: 'chat.postMessage to a private channel that the bot is not in',
      expected: ['channel_not_found', 'not_in_channel'],
      run: () => okOf(client.chat.postMessage({ channel: hidden(), text: 'x' })),
    },
    {
      what: 'conversations.info of that private channel',
      expected: ['channel_not_found'],
      run: () => okOf(client.conversations.info({ channel: hidden() })),
    },
    {
      what: 'conversations.join of that private channel (63)',
      expected: ['method_not_supported_for_channel_type', 'channel_not_found'],
      run: () => okOf(client.apiCall('conversations.join', { channel: hidden() })),
    },
    {
      what: 'conversations.open with the person',
      expected: ['ok', 'ok, already open'],
      run: opened,
    },
    { what: 'conversations.open once more (17)', expected: ['ok, already open'], run: opened },
    {
      what: 'conversations.open with somebody deactivated (16)',
      expected: ['user_disabled'],
      run: () => okOf(client.conversations.open({ users: leaver() })),
    },
    {
      what: 'chat.postMessage to somebody deactivated (15)',
      expected: ['ok'],
      run: async () => {
        await post(world, { channel: leaver(), text: 'A trial of Loadline; this message goes away' });
        return 'ok';
      },
    },
    {
      what: 'users.info of somebody deactivated (15)',
      expected: ['ok, deleted'],
      run: async () => {
        const { user } = await client.users.info({ user: leaver() });
        return user?.deleted ? 'ok, deleted' : 'ok, not deleted';
      },
    },
    {
      what: 'users.info of nobody',
      expected: ['user_not_found'],
      run: () => okOf(client.users.info({ user: 'U0000000000' })),
    },
    {
      what: 'users.list, one person a page',
      expected: ['ok, with a cursor'],
      run: async () => {
        const { response_metadata: metadata } = await client.users.list({ limit: 1 });
        return metadata?.next_cursor ? 'ok, with a cursor' : 'ok, without a cursor';
      },
    },
  ];
}
