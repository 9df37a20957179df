/** Where a team can be set up, with everything real but the platform. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { emptyDatabase } from '../support/databases.ts';
import { DISTRIBUTION, ManyWorkspacesBot, NORTH } from '../support/many-workspaces-bot.ts';

const PEOPLE = ['U0ANA', 'U0BEN', 'U0CHI'];
const SECRET = 'C0SECRET';

let bot: ManyWorkspacesBot;
beforeEach(async () => {
  bot = await ManyWorkspacesBot.start(await emptyDatabase('PGlite'), '2026-11-02T07:00:00Z', DISTRIBUTION, {
    channels: [
      { id: 'C0TEAM', name: 'team', memberIds: PEOPLE },
      { id: SECRET, name: 'secret', memberIds: PEOPLE, isPrivate: true, botIsMember: false },
    ],
  });
  await bot.install(NORTH);
});
afterEach(() => bot.stop());

const standIn = () => bot.platform.standIn(NORTH);
const teamIn = (channelId: string) => bot.deps.store.read((read) => read.teamByChannel(NORTH, channelId));

async function typeSetUp(channelId: string): Promise<string | undefined> {
  await standIn().command('U0ANA', channelId, '/loadline setup');
  await bot.settle();
  return standIn().viewOf('U0ANA')?.id as string | undefined;
}

describe('in a private channel that the bot was not invited to', () => {
  it('no form opens: one reads what to type', async () => {
    expect(await typeSetUp(SECRET)).toBeUndefined();
    expect(bot.textsIn(NORTH, SECRET).at(-1)).toContain('/invite @loadline');
    expect(await teamIn(SECRET)).toBeUndefined();
  });

  it('a form that is open already is refused when it is sent, and keeps what was typed', async () => {
    const viewId = await typeSetUp('C0TEAM');
    bot.platform.answers.set('conversations.info', { ok: false, error: 'channel_not_found' });
    const typed = { name: 'Night shift' };
    standIn().fill('U0ANA', viewId as string, typed);
    const refused = await standIn().submit('U0ANA', viewId as string);
    expect(Object.values(refused.ok ? {} : (refused.fieldErrors ?? {}))).toEqual([
      expect.stringContaining('/invite @loadline'),
    ]);
    expect(await teamIn('C0TEAM')).toBeUndefined();

    bot.platform.answers.clear();
    expect(await standIn().submit('U0ANA', viewId as string)).toEqual({ ok: true });
    await bot.settle();
    expect(await teamIn('C0TEAM')).toMatchObject({ name: 'Night shift' });
  });
});
