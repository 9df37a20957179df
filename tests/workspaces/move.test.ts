/** A team that moves to another channel, with everything real but the platform. */
import { afterEach, beforeEach, expect, it } from 'vitest';
import { emptyDatabase } from '../support/databases.ts';
import { DISTRIBUTION, ManyWorkspacesBot, NORTH } from '../support/many-workspaces-bot.ts';

const PEOPLE = ['U0ANA', 'U0BEN'];

let bot: ManyWorkspacesBot;
beforeEach(async () => {
  bot = await ManyWorkspacesBot.start(await emptyDatabase('PGlite'), '2026-11-02T07:00:00Z', DISTRIBUTION, {
    users: PEOPLE.map((id) => ({ id, name: id.slice(2).toLowerCase() })),
    channels: [
      { id: 'C0TEAM', name: 'team', memberIds: PEOPLE },
      { id: 'C0NEW', name: 'new-quay', memberIds: PEOPLE },
      { id: 'C0SECRET', name: 'secret', memberIds: PEOPLE, isPrivate: true, botIsMember: false },
    ],
  });
  await bot.install(NORTH);
  await bot.setUpTeam(NORTH);
});
afterEach(() => bot.stop());

async function typeMove(channelId: string, userId = 'U0ANA'): Promise<void> {
  await bot.platform.standIn(NORTH).command(userId, channelId, '/loadline move');
  await bot.settle();
}
const teamIn = (channelId: string) => bot.deps.store.read((read) => read.teamByChannel(NORTH, channelId));

it('is moved by a facilitator who types so in the new channel, and both channels hear of it', async () => {
  await typeMove('C0NEW');
  expect(await teamIn('C0NEW')).toMatchObject({ name: 'team' });
  expect(await teamIn('C0TEAM')).toBeUndefined();
  expect(bot.textsIn(NORTH, 'C0NEW').join('\n')).toMatch(/team has moved here.*<@U0ANA> moved/s);
  expect(bot.textsIn(NORTH, 'C0TEAM').at(-1)).toMatch(/team has moved.*<#C0NEW>/s);
});

it('stays where it is when the bot can’t see the new channel: one reads what to type', async () => {
  await typeMove('C0SECRET');
  expect(bot.textsIn(NORTH, 'C0SECRET').at(-1)).toContain('/invite @loadline');
  expect(await teamIn('C0TEAM')).toBeDefined();
});

it('is not moved by somebody else', async () => {
  await typeMove('C0NEW', 'U0BEN');
  expect(await teamIn('C0NEW')).toBeUndefined();
  expect(bot.textsIn(NORTH, 'C0NEW', 'U0BEN').at(-1)).toContain('<@U0ANA>');
});
