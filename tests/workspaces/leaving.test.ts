/** Somebody leaves their team in words, with everything real but the platform. */
import { afterEach, beforeEach, expect, it } from 'vitest';
import { emptyDatabase } from '../support/databases.ts';
import { ManyWorkspacesBot, NORTH } from '../support/many-workspaces-bot.ts';

let bot: ManyWorkspacesBot;
beforeEach(async () => {
  bot = await ManyWorkspacesBot.start(await emptyDatabase('PGlite'), '2026-11-02T07:00:00Z');
  await bot.install(NORTH);
});
afterEach(() => bot.stop());

it('in direct messages a word is enough to get the form, whose button is the last word', async () => {
  const team = await bot.setUpTeam(NORTH);
  const standIn = bot.platform.standIn(NORTH);
  await standIn.say('U0BEN', 'dm', 'leave');
  await bot.settle();
  const message = standIn.messagesOf('U0BEN', 'D0BEN').at(-1);
  expect(JSON.stringify(message?.blocks)).toContain('open-leave-form');
  await standIn.click('U0BEN', { channel: 'D0BEN', ts: message?.ts ?? '' }, 'open-leave-form');
  await bot.settle();
  const form = standIn.viewOf('U0BEN');
  expect(JSON.stringify(form)).toContain('You are asked nothing more about');
  await standIn.submit('U0BEN', form?.id as string);
  await bot.settle();
  expect(bot.textsIn(NORTH, 'D0BEN', 'U0BEN').at(-1)).toContain('You have left');
  const members = await bot.deps.store.read((read) => read.membersOf(team.id));
  expect(members.find(({ userId }) => userId === 'U0BEN')).toMatchObject({ isActive: false });
});
