/** Where a team can be set up, with everything real but the platform. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { emptyDatabase } from '../support/databases.ts';
import { DISTRIBUTION, ManyWorkspacesBot, NORTH } from '../support/many-workspaces-bot.ts';

const PEOPLE = ['U0ANA', 'U0BEN', 'U0CHI'];
/** With those three, 50,000 people. */
const COMPANY = Array.from({ length: 49_997 }, (_, i) => ({ id: `U9${i}`, name: `person${i}` }));
const EVERYBODY = [...PEOPLE, ...COMPANY.map(({ id }) => id)];
const SECRET = 'C0SECRET';

let bot: ManyWorkspacesBot;
beforeEach(async () => {
  bot = await ManyWorkspacesBot.start(await emptyDatabase('PGlite'), '2026-11-02T07:00:00Z', DISTRIBUTION, {
    users: [...PEOPLE.map((id) => ({ id, name: id.slice(2).toLowerCase() })), ...COMPANY],
    channels: [
      { id: 'C0ALL', name: 'all', memberIds: EVERYBODY },
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

describe('in a company of 50,000 people', () => {
  /** How often each method was called by what follows. */
  async function callsOf(work: () => Promise<unknown>): Promise<Record<string, number>> {
    const before = bot.platform.calls.length;
    await work();
    const calls = Object.groupBy(bot.platform.calls.slice(before), ({ method }) => method);
    return Object.fromEntries(Object.entries(calls).map(([method, made]) => [method, made?.length ?? 0]));
  }

  it('the form opens after a few calls, and offers the people of a small channel', async () => {
    // Three people and the bot.
    expect(await callsOf(() => typeSetUp('C0TEAM'))).toEqual({
      'conversations.info': 1,
      'conversations.members': 1,
      'users.info': 4,
      'views.open': 1,
    });
  });

  it('the form opens after a call more in the channel of all, and offers its caller', async () => {
    let viewId: string | undefined;
    const opening = await callsOf(async () => {
      viewId = await typeSetUp('C0ALL');
    });
    expect(opening).toEqual({
      'conversations.info': 1,
      // Whether the caller is in it.
      'conversations.members': 2,
      'users.info': 1,
      'views.open': 1,
    });

    standIn().fill('U0ANA', viewId as string, { memberIds: ['U0ANA', 'U942', 'U949996'] });
    const sending = await callsOf(() => standIn().submit('U0ANA', viewId as string));
    expect(sending).toMatchObject({ 'conversations.info': 1, 'users.info': 2 });
    expect(Object.keys(sending)).not.toContain('users.list');
    await bot.settle();
    const team = await teamIn('C0ALL');
    const members = await bot.deps.store.read((read) => read.membersOf(team?.id as string));
    expect(members.map(({ name }) => name)).toEqual(['ana', 'person42', 'person49996']);
  });
});
