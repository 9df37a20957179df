/** `npm start` and `npm run rotate-keys` for many workspaces, as an operator runs them: processes of their own. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { rotateKeys } from '../../src/operator/rotate-keys.ts';
import { type BotProcess, MAIN, SIGNING_SECRET, startedLine, startProcess } from '../support/bot-process.ts';
import { type OwnPostgres, withPostgres } from '../support/databases.ts';
import { SharedPlatform } from '../support/shared-platform.ts';

const CLIENT_SECRET = 'client-secret-of-the-test';
const PUBLIC_URL = 'https://loadline.example.org';
const SPRING = Buffer.alloc(32, 1).toString('base64');
const AUTUMN = Buffer.alloc(32, 2).toString('base64');
const NORTH = 'T0NORTH';
const START_LIMIT_MS = 90_000;

const running: BotProcess[] = [];
let own: OwnPostgres;
let platform: SharedPlatform;

beforeEach(async () => {
  own = await withPostgres('nothing');
  platform = new SharedPlatform({
    clientId: '1234.5678',
    clientSecret: CLIENT_SECRET,
    redirectUri: `${PUBLIC_URL}/slack/oauth`,
  });
  await platform.start([
    {
      teamId: NORTH,
      teamName: 'North',
      signingSecret: SIGNING_SECRET,
      users: [{ id: 'U0ANA', name: 'ana' }],
      channels: [{ id: 'C0TEAM', name: 'team', memberIds: ['U0ANA'] }],
      now: () => new Date(),
    },
  ]);
});
afterEach(async () => {
  for (const { child } of running.splice(0)) child.kill('SIGKILL');
  await platform.stop();
  await own.drop();
});

function run(command: readonly string[], more: Record<string, string | undefined>): BotProcess {
  const one = startProcess(['--disable-warning=ExperimentalWarning', MAIN, ...command], {
    LOADLINE_MODE: 'http',
    LOADLINE_SIGNING_SECRET: SIGNING_SECRET,
    LOADLINE_CLIENT_ID: '1234.5678',
    LOADLINE_CLIENT_SECRET: CLIENT_SECRET,
    LOADLINE_PUBLIC_URL: PUBLIC_URL,
    LOADLINE_ALLOWED_WORKSPACES: '*',
    LOADLINE_API_URL: `${platform.url}/api/`,
    DATABASE_URL: own.databaseUrl,
    PORT: '0',
    ...more,
  });
  running.push(one);
  return one;
}

async function started(keys: string): Promise<BotProcess & { url: string }> {
  const bot = run([], { LOADLINE_TOKEN_KEYS: keys });
  await expect.poll(() => startedLine(bot), { timeout: START_LIMIT_MS }).toBeDefined();
  return { ...bot, url: `http://127.0.0.1:${startedLine(bot)?.port}` };
}

async function stop(bot: BotProcess): Promise<void> {
  bot.child.kill('SIGTERM');
  expect(await bot.ended).toBe(0);
}

async function install(url: string): Promise<number> {
  const begun = await fetch(`${url}/slack/install`);
  const link = /href="([^"]*)"/.exec(await begun.text())?.[1]?.replaceAll('&amp;', '&') ?? '';
  const cookie = begun.headers.get('set-cookie')?.split(';')[0] ?? '';
  const back = platform.agree(link, NORTH, 'U0ANA').replace(PUBLIC_URL, url);
  return (await fetch(back, { headers: { cookie } })).status;
}

describe('a bot for many workspaces', () => {
  it('refuses half of its settings, and a bot token beside them, all at once', async () => {
    const bot = run([], { LOADLINE_CLIENT_SECRET: undefined, LOADLINE_BOT_TOKEN: 'xoxb-1' });
    expect(await bot.ended).toBe(1);
    expect(bot.output()).toMatch(/LOADLINE_CLIENT_SECRET is missing\. .*Basic Information/);
    expect(bot.output()).toMatch(/LOADLINE_TOKEN_KEYS is missing\. .*openssl rand -base64 32/);
    expect(bot.output()).toMatch(/LOADLINE_BOT_TOKEN is set together with settings for many workspaces/);
    expect(bot.output()).not.toContain(SIGNING_SECRET);
  });

  it('starts with no workspace, is installed, works, and keeps its workspaces over a change of keys', {
    timeout: START_LIMIT_MS * 6,
  }, async () => {
    const first = await started(`spring:${SPRING}`);
    const standIn = platform.standIn(NORTH);
    const answers = () =>
      standIn.messagesOf('U0ANA', 'dm').filter(({ byBot, text }) => byBot && text.includes('/loadline'))
        .length;
    standIn.connectBot(`${first.url}/slack/events`);
    expect((await fetch(`${first.url}/readyz`)).status).toBe(200);
    expect(await install(first.url)).toBe(200);
    // Answered with the workspace's own token. Before the form, which waits only three seconds, in any order.
    await standIn.say('U0ANA', 'dm', 'help');
    await expect.poll(answers, { timeout: 20_000 }).toBe(1);
    expect(await standIn.command('U0ANA', 'C0TEAM', '/loadline setup')).toEqual({ ok: true });
    await expect.poll(() => standIn.viewOf('U0ANA')?.callback_id, { timeout: 20_000 }).toBe('setup-form');
    await standIn.submit('U0ANA', standIn.viewOf('U0ANA')?.id as string);
    // Delivered by the queue of the running process, with the workspace's own token.
    await expect
      .poll(() => standIn.allPosts().some(({ text }) => /is set up with 1 member/.test(text)), {
        timeout: 20_000,
      })
      .toBe(true);
    await stop(first);

    const refused = run([], { LOADLINE_TOKEN_KEYS: `autumn:${AUTUMN}` });
    expect(await refused.ended).toBe(1);
    expect(refused.output()).toMatch(/^- The key spring is missing in LOADLINE_TOKEN_KEYS/m);

    const rotated = run(['rotate-keys'], {
      LOADLINE_TOKEN_KEYS: `autumn:${AUTUMN},spring:${SPRING}`,
    });
    expect(await rotated.ended).toBe(0);
    expect(rotated.output().trim()).toBe('1 token was encrypted again. All tokens now use the key autumn.');

    const second = await started(`autumn:${AUTUMN}`);
    standIn.connectBot(`${second.url}/slack/events`);
    await standIn.say('U0ANA', 'dm', 'help');
    await expect.poll(answers, { timeout: 20_000 }).toBe(2);
    await stop(second);

    for (const { output } of running) {
      expect(output()).not.toMatch(/xoxb-|code-/);
      for (const secret of [CLIENT_SECRET, SIGNING_SECRET, SPRING, AUTUMN]) {
        expect(output()).not.toContain(secret);
      }
    }
  });

  it('has no keys to rotate when it serves one workspace', async () => {
    const settings = { LOADLINE_BOT_TOKEN: 'xoxb-1', LOADLINE_APP_TOKEN: 'xapp-1' };
    expect(await rotateKeys([], settings)).toEqual({
      code: 1,
      stderr: 'There are no keys to rotate: LOADLINE_TOKEN_KEYS is not set.',
    });
  });
});
