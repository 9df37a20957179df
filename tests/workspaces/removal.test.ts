/** A workspace removes the bot and installs it again, while its team is in the middle of a sprint. */
import { sql } from 'drizzle-orm';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { endFormerInstallation } from '../../src/slack/workspaces/connect.ts';
import type { Database } from '../../src/store/database.ts';
import { emptyDatabase } from '../support/databases.ts';
import { ManyWorkspacesBot, NORTH, SOUTH } from '../support/many-workspaces-bot.ts';
import { rowsOf } from '../support/rows-of.ts';

let database: Database;
let bot: ManyWorkspacesBot;
beforeEach(async () => {
  database = await emptyDatabase('Postgres');
  bot = await ManyWorkspacesBot.start(database, '2026-11-02T07:00:00Z');
  await bot.install(NORTH);
  await bot.install(SOUTH);
});
afterEach(() => bot.stop());

/** A team of three with one sprint of two weeks, prompted at 09:00 UTC. */
async function teamWithSprint(workspaceId: string): Promise<{ teamId: string; sprintId: string }> {
  const team = await bot.setUpTeam(workspaceId);
  await bot.deps.store.transaction((tx) =>
    tx.write.teams.save({ ...team, promptAt: '09:00', timeZone: 'Etc/UTC' }),
  );
  const sprint = await bot.plan(workspaceId, team.id, 'Tide table, 5, @ana');
  await bot.settle();
  return { teamId: team.id, sprintId: sprint.id };
}

function installationOf(workspaceId: string) {
  return bot.deps.store.read((read) => read.installationOf(workspaceId));
}

/** But for those which said that somebody came onto the team. */
async function statesOfPosts(workspaceId: string): Promise<string[]> {
  const posts = await rowsOf<{ kind: string; state: string }>(
    database,
    sql`select kind, state from loadline.posts where workspace_id = ${workspaceId}
      and kind <> 'role-given' order by entry_order`,
  );
  return posts.map(({ kind, state }) => `${kind} ${state}`);
}

const prompts = (workspaceId: string): string[] =>
  bot.textsIn(workspaceId, 'D0ANA').filter((text) => text.includes('Tide table'));

describe('when a workspace removes the bot', () => {
  it('its token is erased, and what else is known of the installation stays', async () => {
    const before = await installationOf(NORTH);
    expect(await bot.remove(NORTH)).toEqual({ status: 200, text: '' });
    expect(await installationOf(NORTH)).toEqual({
      ...before,
      token: undefined,
      revokedAt: new Date('2026-11-02T07:00:00Z'),
    });
    expect((await installationOf(SOUTH))?.token).toBeDefined();
  });

  it('by taking the bot’s token back, the same happens', async () => {
    await bot.remove(NORTH, { type: 'tokens_revoked', tokens: { bot: ['U0LOADLINE'] } });
    expect((await installationOf(NORTH))?.token).toBeUndefined();
  });

  it('but only takes a person’s token back, nothing happens', async () => {
    await bot.removed(NORTH, { type: 'tokens_revoked', tokens: { oauth: ['U0ANA'], bot: [] } });
    await bot.removed(NORTH, { type: 'tokens_revoked', tokens: { oauth: ['U0ANA'] } });
    expect((await installationOf(NORTH))?.token).toBeDefined();
  });

  it.each(['app_uninstalled', 'tokens_revoked'])(
    'says %s, and yet the platform takes its token, nothing is erased',
    async (type) => {
      await bot.removed(NORTH, { type, tokens: { bot: ['U0LOADLINE'] } });
      expect((await installationOf(NORTH))?.token).toBeDefined();
      expect(bot.log.text()).toContain('the platform still takes the token');
    },
  );

  it('and the platform says of its token only that it is invalid, it is erased as well', async () => {
    bot.platform.answers.set('auth.test', { ok: false, error: 'invalid_auth' });
    await bot.removed(NORTH);
    expect((await installationOf(NORTH))?.token).toBeUndefined();
  });

  it('and the platform can’t be asked, its token stays until it is refused', async () => {
    bot.platform.answers.set('auth.test', { ok: false, error: 'fatal_error' });
    await bot.remove(NORTH);
    expect((await installationOf(NORTH))?.token).toBeDefined();
    bot.platform.answers.clear();
    await bot.removed(NORTH);
    expect((await installationOf(NORTH))?.token).toBeUndefined();
  });

  it('its clocks stop while those of others go on', async () => {
    const north = await teamWithSprint(NORTH);
    await teamWithSprint(SOUTH);
    await bot.remove(NORTH);
    await bot.pass('2026-11-03T09:00:00Z');
    expect(prompts(NORTH)).toEqual([]);
    expect(prompts(SOUTH)).toHaveLength(1);
    expect(await statesOfPosts(NORTH)).toEqual(['team-set-up sent', 'plan sent']);
    await bot.pass('2026-11-20T09:00:00Z');
    const sprint = await bot.deps.store.read((read) => read.sprintById(north.sprintId));
    expect(sprint?.state).toBe('open');
  });

  it('what it was owed waits untried, and does not come back to the queue by itself', async () => {
    const { teamId } = await teamWithSprint(NORTH);
    await bot.deps.store.transaction((tx) =>
      tx.write.posts.add([
        {
          id: 'owed',
          workspaceId: NORTH,
          recipient: { channelId: 'C0TEAM' },
          subject: { kind: 'team-set-up', teamId, byUserId: 'U0ANA' },
        },
      ]),
    );
    await bot.remove(NORTH);
    const callsBefore = bot.platform.calls.length;
    expect(await bot.settle()).toBe(1);
    expect(await bot.settle()).toBe(0);
    expect(bot.platform.calls.length).toBe(callsBefore);
    expect(await statesOfPosts(NORTH)).toContain('team-set-up pending');
    expect(await rowsOf(database, sql`select 1 from pgboss.job where state < 'completed'`)).toEqual([]);
  });

  it('people who ask there are told how it can be installed, and nothing is stored', async () => {
    await bot.remove(NORTH);
    const seen = await rowsOf(database, sql`select * from loadline.seen_events`);
    const answer = await bot.send({
      command: '/loadline',
      text: 'setup',
      team_id: NORTH,
      user_id: 'U0ANA',
      channel_id: 'C0TEAM',
      trigger_id: 'trigger-1',
    });
    expect(answer.text).toContain('Loadline isn’t installed in this workspace');
    expect(answer.text).toContain('https://loadline.example.org/slack/install');
    const form = await bot.send({
      type: 'view_submission',
      user: { id: 'U0ANA' },
      team: { id: NORTH },
      trigger_id: 'trigger-2',
      view: { id: 'V1', callback_id: 'setup-form', private_metadata: '{"channelId":"C0TEAM"}' },
    });
    expect(form.text).toContain('Loadline isn’t installed in this workspace');
    expect(await rowsOf(database, sql`select * from loadline.seen_events`)).toEqual(seen);
    expect(await rowsOf(database, sql`select * from loadline.teams`)).toEqual([]);
  });

  it('and nobody said so, the platform’s refusal of the token shows it', async () => {
    await teamWithSprint(NORTH);
    bot.platform.revokeTokens(NORTH);
    await bot.pass('2026-11-03T09:00:00Z');
    expect((await installationOf(NORTH))?.token).toBeUndefined();
    expect(await statesOfPosts(NORTH)).toContain('daily-prompt pending');
    expect((await installationOf(SOUTH))?.token).toBeDefined();
  });
});

describe('when it installs the bot again', () => {
  it('clocks go on and what waited is sent, with the new token', async () => {
    await teamWithSprint(NORTH);
    bot.platform.revokeTokens(NORTH);
    await bot.pass('2026-11-03T09:00:00Z');
    expect(prompts(NORTH)).toEqual([]);
    await bot.install(NORTH);
    await bot.settle();
    expect(prompts(NORTH)).toHaveLength(1);
    await bot.pass('2026-11-04T09:00:00Z');
    expect(prompts(NORTH)).toHaveLength(2);
    expect(await installationOf(NORTH)).toMatchObject({ revokedAt: undefined });
  });

  it('a prompt whose day has passed meanwhile is not sent afterwards, and a sprint whose time is over closes', async () => {
    await teamWithSprint(NORTH);
    bot.platform.revokeTokens(NORTH);
    await bot.pass('2026-11-03T09:00:00Z');
    bot.set('2026-11-16T08:00:00Z');
    await bot.install(NORTH);
    await bot.settle();
    expect(prompts(NORTH)).toEqual([]);
    await bot.pass('2026-11-16T08:01:00Z');
    expect(bot.textsIn(NORTH, 'C0TEAM').join('\n')).toMatch(/Harbour 12: missed/);
    expect(await statesOfPosts(NORTH)).toEqual([
      'team-set-up sent',
      'plan sent',
      'daily-prompt skipped',
      'verdict sent',
      'verdict-numbers sent',
      'verdict-cards sent',
      'verdict-notes sent',
    ]);
  });

  it('a late repetition of the removal does not undo it, whatever the clocks say', async () => {
    await bot.remove(NORTH);
    bot.set('2026-11-02T07:03:00Z');
    await bot.install(NORTH);
    for (const clock of ['2026-11-02T07:00:00Z', '2026-11-02T07:03:00Z', '2026-11-02T09:00:00Z']) {
      bot.set(clock);
      await bot.removed(NORTH);
      expect((await installationOf(NORTH))?.token).toBeDefined();
    }
  });

  it('by putting its token into the settings, its clocks go on too', async () => {
    await teamWithSprint(NORTH);
    await bot.pass('2026-11-03T08:00:00Z');
    bot.platform.revokeTokens(NORTH);
    await bot.pass('2026-11-03T09:00:00Z');
    expect(await statesOfPosts(NORTH)).toContain('daily-prompt pending');
    await endFormerInstallation(bot.deps.store, NORTH);
    expect(await installationOf(NORTH)).toBeUndefined();
    // What waited is tried again; with this bot for many workspaces it waits on.
    expect(await bot.settle()).toBe(1);
    await bot.pass('2026-11-04T09:00:00Z');
    expect((await statesOfPosts(NORTH)).filter((post) => post === 'daily-prompt pending')).toHaveLength(2);
  });

  it('no client with the former token is left', async () => {
    const former = await bot.workspaces.find(NORTH);
    await bot.install(NORTH);
    const present = await bot.workspaces.find(NORTH);
    expect(present?.botToken).not.toBe(former?.botToken);
    expect(present?.bulk).not.toBe(former?.bulk);
    expect(await bot.workspaces.tokenIsVoid(former as NonNullable<typeof former>)).toBe('renewed');
    expect((await installationOf(NORTH))?.token).toBeDefined();
  });
});
