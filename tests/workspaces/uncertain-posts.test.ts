/** A post of which nobody knows whether it got through, in a channel without the bot; everything is real but the platform. */
import { sql } from 'drizzle-orm';
import { describe, expect, it, onTestFinished } from 'vitest';
import { deliverPost } from '../../src/app/posting/deliver.ts';
import { type Fault, LOADLINE_SCOPES } from '../../src/rehearsal/stand-in/stand-in-options.ts';
import { emptyDatabase } from '../support/databases.ts';
import { DISTRIBUTION, ManyWorkspacesBot, NORTH } from '../support/many-workspaces-bot.ts';
import { rowsOf } from '../support/rows-of.ts';

const PEOPLE = ['ana', 'ben', 'chi'].map((name) => ({ id: `U0${name.toUpperCase()}`, name }));

/** Ana sets a team up in a public channel; its first message meets the fault, and is delivered once more. */
async function firstPostAgain(fault: Fault, scopes: readonly string[] = LOADLINE_SCOPES) {
  const faults = [fault];
  const channel = { id: 'C0TEAM', name: 'team', memberIds: PEOPLE.map(({ id }) => id), botIsMember: false };
  const bot = await ManyWorkspacesBot.start(
    await emptyDatabase('PGlite'),
    '2026-11-02T07:00:00Z',
    DISTRIBUTION,
    {
      users: PEOPLE,
      channels: [channel],
      scopes,
      faultFor: (method, sent) =>
        method === 'chat.postMessage' && sent.includes('C0TEAM') ? faults.shift() : undefined,
    },
  );
  onTestFinished(() => bot.stop());
  await bot.install(NORTH);
  await bot.setUpTeam(NORTH);
  const postNow = async () => {
    const [post] = await rowsOf<{ id: string; state: string; last_error: string }>(
      bot.database,
      sql`select id, state, last_error from loadline.posts where kind = 'team-set-up'`,
    );
    if (!post) throw new Error('there is no post');
    return post;
  };
  const { id, state } = await postNow();
  expect(state).toBe('uncertain');
  bot.platform.calls.length = 0;
  await deliverPost(bot.deps, id);
  await bot.settle();
  return {
    bot,
    postNow,
    calls: () => bot.platform.calls.map(({ method }) => method),
    welcomes: () => bot.textsIn(NORTH, 'C0TEAM').filter((text) => text.includes('is set up')),
  };
}

const LOOKED = ['conversations.history', 'conversations.join', 'conversations.history'];

describe('in a public channel without the bot', () => {
  it.each<[string, Fault, string]>([
    ['got through', { dropConnection: 'after' }, 'chat.update'],
    ['did not get through', { dropConnection: 'before' }, 'chat.postMessage'],
    ['got through, though the platform failed', { status: 500, applied: true }, 'chat.update'],
  ])('a post that %s is there once: the bot joins and looks', async (_what, fault, lastCall) => {
    const { calls, welcomes, postNow } = await firstPostAgain(fault);
    expect(calls()).toEqual([...LOOKED, lastCall]);
    expect(welcomes()).toHaveLength(1);
    expect(await postNow()).toMatchObject({ state: 'sent' });
  });

  it('that it may not join, the post waits for the operator, is not sent twice, and a facilitator hears of it', async () => {
    const scopes = LOADLINE_SCOPES.filter((scope) => scope !== 'channels:join');
    const { bot, calls, welcomes, postNow } = await firstPostAgain({ dropConnection: 'after' }, scopes);
    expect(calls().slice(0, 2)).toEqual(LOOKED.slice(0, 2));
    expect(welcomes()).toHaveLength(1);
    expect(await postNow()).toMatchObject({ state: 'dead', last_error: 'not_in_channel' });
    expect(bot.textsIn(NORTH, 'D0ANA').at(-1)).toMatch(/can’t post in the channel of.*\/invite @loadline/s);
  });
});
