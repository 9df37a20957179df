/** Events about the team's channel, with everything real but the platform. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { emptyDatabase } from '../support/databases.ts';
import { ManyWorkspacesBot, NORTH } from '../support/many-workspaces-bot.ts';

let bot: ManyWorkspacesBot;
beforeEach(async () => {
  bot = await ManyWorkspacesBot.start(await emptyDatabase('PGlite'), '2026-11-02T07:00:00Z');
  await bot.install(NORTH);
  await bot.setUpTeam(NORTH);
});
afterEach(() => bot.stop());

async function toldAfter(event: object): Promise<string[]> {
  const before = bot.textsIn(NORTH, 'D0ANA').length;
  await bot.removed(NORTH, event);
  await bot.settle();
  return bot.textsIn(NORTH, 'D0ANA').slice(before);
}

describe('an event about the team’s channel', () => {
  it.each([
    'channel_archive',
    'group_archive',
    'channel_deleted',
    'group_deleted',
    'channel_left',
    'group_left',
  ])('has the facilitator told what to do: %s', async (type) => {
    bot.platform.answers.set('conversations.info', { ok: false, error: 'channel_not_found' });
    expect(await toldAfter({ type, channel: 'C0TEAM', actor_id: 'U0BEN' })).toEqual([
      expect.stringMatching(/\/invite @loadline.*\/loadline move/s),
    ]);
    // The platform may send it again.
    expect(await toldAfter({ type, channel: 'C0TEAM', actor_id: 'U0BEN' })).toEqual([]);
  });

  it('that the bot was taken out is told, and not that somebody else left', async () => {
    const left = { type: 'member_left_channel', channel: 'C0TEAM', channel_type: 'C', team: NORTH };
    expect(await toldAfter({ ...left, user: 'U0BEN' })).toEqual([]);
    expect(await toldAfter({ ...left, user: 'U0LOADLINE' })).toEqual([
      expect.stringContaining('/invite @loadline'),
    ]);
  });

  it('that its id changed moves the team', async () => {
    const event = { type: 'channel_id_changed', old_channel_id: 'C0TEAM', new_channel_id: 'C0SHARED' };
    expect(await toldAfter(event)).toEqual([]);
    const team = await bot.deps.store.read((read) => read.teamByChannel(NORTH, 'C0SHARED'));
    expect(team).toMatchObject({ workspaceId: NORTH, channelId: 'C0SHARED' });
  });
});
