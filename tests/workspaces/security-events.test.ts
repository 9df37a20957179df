/** What the log says of who let the bot in, took data away or was refused, and that it holds no id of a person elsewhere. */
import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { notingUseCases, SECURITY_EVENTS } from '../../src/app/security-events.ts';
import { leaveTeam } from '../../src/app/team/leave-team.ts';
import { bindUseCases } from '../../src/app/use-cases.ts';
import type { Database } from '../../src/store/database.ts';
import { emptyDatabase } from '../support/databases.ts';
import { DISTRIBUTION, ManyWorkspacesBot, NORTH, SOUTH } from '../support/many-workspaces-bot.ts';

const START = '2026-11-02T08:00:00Z';

let database: Database;
let bot: ManyWorkspacesBot;
beforeEach(async () => {
  database = await emptyDatabase('Postgres');
  bot = await ManyWorkspacesBot.start(database, START);
});
afterEach(() => bot.stop());

/** The lines with an event, without what every line has. */
function events(of: ManyWorkspacesBot = bot): Record<string, unknown>[] {
  return of.log
    .entries()
    .filter(({ event }) => event !== undefined)
    .map(({ level: _, time: __, msg: ___, reference: ____, ...event }) => event);
}

describe('a security event is logged', () => {
  it('when a workspace installs the bot and removes it', async () => {
    await bot.install(NORTH, 'U0BEN');
    await bot.remove(NORTH);
    expect(events()).toEqual([
      { event: 'workspace-installed', by: 'person', workspaceId: NORTH, actorId: 'U0BEN' },
      { event: 'workspace-removed', by: 'platform', workspaceId: NORTH },
    ]);
  });

  it('when a workspace may not install it, or asks without having it', async () => {
    const strict = await ManyWorkspacesBot.start(database, START, {
      ...DISTRIBUTION,
      allowedWorkspaces: [SOUTH],
    });
    try {
      const { authorizeUrl, cookie } = await strict.beginInstall();
      await strict.comeBack(strict.platform.agree(authorizeUrl, NORTH, 'U0ANA'), cookie);
      await strict.platform.standIn(NORTH).command('U0ANA', 'C0TEAM', '/loadline setup');
      await strict.settle();
      expect(events(strict)).toEqual([
        {
          event: 'workspace-refused',
          by: 'person',
          workspaceId: NORTH,
          actorId: 'U0ANA',
          reason: 'not-allowed',
        },
        {
          event: 'request-refused',
          by: 'person',
          workspaceId: NORTH,
          actorId: 'U0ANA',
          reason: 'not-installed',
        },
      ]);
    } finally {
      await strict.stop();
    }
  });

  it('when facilitators change, data is handed out, somebody is refused, or erased; and nobody is named elsewhere', async () => {
    await bot.install(SOUTH);
    const team = await bot.setUpTeam(SOUTH);
    const of = { workspaceId: SOUTH, by: 'person' };
    const standIn = bot.platform.standIn(SOUTH);
    const type = async (userId: string, text: string): Promise<void> => {
      await standIn.command(userId, 'C0TEAM', `/loadline ${text}`);
      await bot.settle();
    };
    await type('U0BEN', 'export');
    await type('U0ANA', 'privacy');
    const [button] = standIn
      .messagesOf('U0ANA', 'C0TEAM')
      .flatMap(({ blocks, ts }) =>
        blocks.flatMap((block) =>
          ((block.elements as { action_id?: string }[] | undefined) ?? [])
            .filter(({ action_id }) => action_id?.includes('copy'))
            .map(({ action_id }) => ({ ts, action_id: String(action_id) })),
        ),
      );
    if (!button) throw new Error('there is no button for a copy');
    await standIn.click('U0ANA', { ts: button.ts, channel: 'C0TEAM' }, button.action_id);
    await bot.settle();
    expect(events().slice(1)).toEqual([
      {
        event: 'facilitators-changed',
        ...of,
        actorId: 'U0ANA',
        teamId: team.id,
        added: ['U0ANA'],
        removed: [],
      },
      { event: 'request-refused', ...of, actorId: 'U0BEN', reason: 'not-a-facilitator', refused: true },
      { event: 'data-exported', ...of, actorId: 'U0ANA', personId: 'U0ANA' },
    ]);
    const others = bot.log.entries().filter(({ event }) => event === undefined);
    expect(others.length).toBeGreaterThan(5);
    expect(JSON.stringify(others)).not.toMatch(/U0(ANA|BEN|CHI)|C0TEAM/);
  });

  it('by the bot itself, when a facilitator goes and nobody in the chat asked for it', async () => {
    await bot.install(SOUTH);
    const team = await bot.setUpTeam(SOUTH);
    await leaveTeam(bot.deps, { workspaceId: SOUTH, userId: 'U0ANA' }, { teamId: team.id });
    expect(events().at(-1)).toEqual({
      event: 'facilitators-changed',
      by: 'bot',
      workspaceId: SOUTH,
      teamId: team.id,
      added: [],
      removed: ['U0ANA'],
    });
  });

  it('when a team is ended, goes on after all, and is erased', async () => {
    await bot.install(SOUTH);
    const { id: teamId } = await bot.setUpTeam(SOUTH);
    const ana = { workspaceId: SOUTH, userId: 'U0ANA' };
    const useCases = notingUseCases(bindUseCases(bot.deps), () => undefined);
    await useCases.endTeam(ana, { teamId });
    await useCases.resumeTeam(ana, { channelId: 'C0TEAM', isDirect: false });
    await bot.deps.store.transaction((tx) => tx.write.retention.eraseTeam(teamId));
    const byAna = { by: 'person', workspaceId: SOUTH, actorId: 'U0ANA', teamId };
    expect(events().slice(-3)).toEqual([
      { event: 'team-ended', ...byAna },
      { event: 'team-resumed', ...byAna },
      { event: 'team-erased', by: 'bot', workspaceId: SOUTH, teamId },
    ]);
  });

  it('as docs/privacy.md lists them', () => {
    const page = readFileSync(new URL('../../docs/privacy.md', import.meta.url), 'utf8');
    const [, section = ''] = page.split('### What the log holds of people');
    const [table = ''] = section.split('###');
    const listed = [...table.matchAll(/^\| `([a-z-]+)` \|/gm)].map(([, name]) => name);
    expect(listed).toEqual(['event', ...SECURITY_EVENTS]);
  });
});
