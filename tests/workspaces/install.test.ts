/** Installing the bot through its pages, by HTTP, with a platform that grants tokens. */
import { sql } from 'drizzle-orm';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { emptyDatabase } from '../support/databases.ts';
import { DISTRIBUTION, ManyWorkspacesBot, NORTH, SOUTH } from '../support/many-workspaces-bot.ts';
import { rowsOf } from '../support/rows-of.ts';

const START = '2026-11-02T08:00:00Z';

let database: Database;
let bot: ManyWorkspacesBot;
beforeEach(async () => {
  database = await emptyDatabase('Postgres');
  bot = await ManyWorkspacesBot.start(database, START);
});
afterEach(() => bot.stop());

async function rowsIn(table: 'installations' | 'install_attempts'): Promise<Record<string, unknown>[]> {
  return rowsOf(database, sql.raw(`select * from loadline.${table}`));
}

describe('an installation', () => {
  it('ends with the workspace’s token, encrypted, and with who granted what', async () => {
    const { authorizeUrl, cookie } = await bot.beginInstall();
    const page = await bot.comeBack(bot.platform.agree(authorizeUrl, NORTH, 'U0BEN'), cookie);
    expect(page.status).toBe(200);
    expect(page.html).toContain('It now works in the workspace North.');
    const [row, ...others] = await rowsIn('installations');
    expect(others).toEqual([]);
    expect(row).toMatchObject({
      workspace_id: NORTH,
      workspace_name: 'North',
      enterprise_id: null,
      bot_user_id: 'U0LOADLINE',
      bot_id: 'B0LOADLINE',
      key_name: 'spring',
      installed_by: 'U0BEN',
      revoked_at: null,
    });
    expect(row?.sealed_token).toMatch(/^v1\./);
    expect(JSON.stringify(row)).not.toContain('xoxb-');
    expect(await bot.workspaces.find(NORTH)).toMatchObject({ botToken: `xoxb-${NORTH}-granted-1` });
    expect(await bot.workspaces.find(SOUTH)).toBeUndefined();
  });

  it.each([
    ['null', { enterprise: null, authed_user: null, refresh_token: null, expires_in: null }],
    ['empty', { enterprise: { id: '', name: '' }, authed_user: { id: '' }, refresh_token: '' }],
  ])('ends well where what the platform needn’t say is %s', async (_what, more) => {
    bot.platform.grantMore = more;
    const { authorizeUrl, cookie } = await bot.beginInstall();
    const page = await bot.comeBack(bot.platform.agree(authorizeUrl, NORTH, 'U0BEN'), cookie);
    expect(page.status).toBe(200);
    expect((await rowsIn('installations'))[0]).toMatchObject({ enterprise_id: null, installed_by: null });
  });

  it('leaves neither token nor code nor secret in the log', async () => {
    await bot.install(NORTH);
    expect(bot.log.text()).toContain('A workspace installed the bot.');
    expect(bot.log.text()).not.toMatch(/xoxb-|code-|client-secret|state=/);
  });

  it('is begun on a page that loads, frames and keeps nothing, with a cookie of this host for ten minutes', async () => {
    const { response, html } = await bot.beginInstall();
    expect(response.status).toBe(200);
    expect(response.headers.get('set-cookie')).toMatch(
      /^__Host-loadline-install=[\w-]{43}; Max-Age=600; Path=\/; Secure; HttpOnly; SameSite=Lax$/,
    );
    expect(response.headers.get('content-security-policy')).toMatch(
      /^default-src 'none'; style-src 'sha256-[^']+'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'$/,
    );
    expect(Object.fromEntries(response.headers)).toMatchObject({
      'cache-control': 'no-store',
      'referrer-policy': 'no-referrer',
      'x-content-type-options': 'nosniff',
    });
    expect(html).not.toContain('<script');
  });

  it('stores nothing before the platform has said yes, however often it is begun', async () => {
    for (let times = 0; times < 20; times += 1) await bot.beginInstall();
    for (const table of ['install_attempts', 'installations'] as const)
      expect(await rowsIn(table)).toEqual([]);
  });

  it('shows the browser’s key to nobody: the state is signed with it and does not hold it', async () => {
    const { authorizeUrl, cookie } = await bot.beginInstall();
    const state = new URL(authorizeUrl).searchParams.get('state') as string;
    expect(state).toMatch(/^\d+\.[\w-]{43}$/);
    expect(state).not.toContain(cookie.split('=')[1] as string);
  });

  it('can end at another process of the same bot', async () => {
    const { authorizeUrl, cookie } = await bot.beginInstall();
    const other = await ManyWorkspacesBot.start(database, START);
    try {
      const address = other.platform.agree(
        authorizeUrl.replace(bot.platform.url, other.platform.url),
        NORTH,
        'U0ANA',
      );
      expect((await other.comeBack(address, cookie)).status).toBe(200);
    } finally {
      await other.stop();
    }
  });

  it('makes a state and a cookie of its own each time', async () => {
    const [one, two] = [await bot.beginInstall(), await bot.beginInstall()];
    expect(one.cookie).not.toBe(two.cookie);
    expect(one.authorizeUrl).not.toBe(two.authorizeUrl);
  });
});

describe('coming back from the platform', () => {
  /** What nobody may finish is refused in words, and nothing is stored. */
  async function expectStale(address: string, cookie: string): Promise<void> {
    const { status, html } = await bot.comeBack(address, cookie);
    expect(status).toBe(400);
    expect(html).toContain('This link no longer works');
    expect(html).toContain('href="https://loadline.example.org/slack/install"');
    expect(await rowsIn('installations')).toEqual([]);
  }

  it('serves once', async () => {
    const { authorizeUrl, cookie } = await bot.beginInstall();
    const address = bot.platform.agree(authorizeUrl, NORTH, 'U0ANA');
    expect((await bot.comeBack(address, cookie)).status).toBe(200);
    await database.session.execute(sql`truncate loadline.installations`);
    const { status, html } = await bot.comeBack(address, cookie);
    expect([status, html]).toEqual([400, expect.stringContaining('refused the code')]);
    expect(await rowsIn('installations')).toEqual([]);
  });

  it('serves once though two browsers’ tabs or replicas get it at the same time', async () => {
    const { authorizeUrl, cookie } = await bot.beginInstall();
    const address = bot.platform.agree(authorizeUrl, NORTH, 'U0ANA');
    const pages = await Promise.all([1, 2, 3].map(() => bot.comeBack(address, cookie)));
    expect(pages.map(({ status }) => status).toSorted()).toEqual([200, 400, 400]);
  });

  it('in another browser does not serve: somebody could be led into another’s installation', async () => {
    const { authorizeUrl } = await bot.beginInstall();
    const other = await bot.beginInstall();
    await expectStale(bot.platform.agree(authorizeUrl, NORTH, 'U0ANA'), other.cookie);
  });

  it('with a cookie that does not fit does not serve, and takes nothing from whom it belongs to', async () => {
    const { authorizeUrl, cookie } = await bot.beginInstall();
    const address = bot.platform.agree(authorizeUrl, NORTH, 'U0ANA');
    await expectStale(address, `__Host-loadline-install=${'a'.repeat(43)}`);
    expect((await bot.comeBack(address, cookie)).status).toBe(200);
  });

  it('without any cookie does not serve, as when a program looks at the address before its owner does', async () => {
    const { authorizeUrl, cookie } = await bot.beginInstall();
    const address = bot.platform.agree(authorizeUrl, NORTH, 'U0ANA');
    await expectStale(address, '');
    expect((await bot.comeBack(address, cookie)).status).toBe(200);
  });

  it('with a time put off does not serve', async () => {
    const { authorizeUrl, cookie } = await bot.beginInstall();
    const address = new URL(bot.platform.agree(authorizeUrl, NORTH, 'U0ANA'));
    const [time, signature] = (address.searchParams.get('state') as string).split('.');
    address.searchParams.set('state', `${Number(time) + 1}.${signature}`);
    await expectStale(address.href, cookie);
  });

  it('after ten minutes does not serve', async () => {
    const { authorizeUrl, cookie } = await bot.beginInstall();
    bot.set('2026-11-02T08:10:00Z');
    await expectStale(bot.platform.agree(authorizeUrl, NORTH, 'U0ANA'), cookie);
  });

  it('a moment before the ten minutes are over serves', async () => {
    const { authorizeUrl, cookie } = await bot.beginInstall();
    bot.set('2026-11-02T08:09:59Z');
    const { status } = await bot.comeBack(bot.platform.agree(authorizeUrl, NORTH, 'U0ANA'), cookie);
    expect(status).toBe(200);
  });

  it.each([
    ['no state', ''],
    ['a made-up state', `state=1793608000000.${'a'.repeat(43)}`],
    ['a state of another length', 'state=a'],
    ['two states', 'state=a&state=b'],
    ['NUL in its state', 'state=%00'],
  ])('with %s does not serve', async (_what, query) => {
    const { cookie } = await bot.beginInstall();
    await expectStale(`https://loadline.example.org/slack/oauth?code=x&${query}`, cookie);
  });

  it('with the cookie given twice does not serve', async () => {
    const { authorizeUrl, cookie } = await bot.beginInstall();
    await expectStale(bot.platform.agree(authorizeUrl, NORTH, 'U0ANA'), `${cookie}; ${cookie}`);
  });

  it('says so when it was not agreed to', async () => {
    const { authorizeUrl, cookie } = await bot.beginInstall();
    const state = new URL(authorizeUrl).searchParams.get('state');
    const { status, html } = await bot.comeBack(
      `https://loadline.example.org/slack/oauth?error=access_denied&state=${state}`,
      cookie,
    );
    expect(status).toBe(403);
    expect(html).toContain('was not approved');
  });

  it('shows nothing of what is in the address', async () => {
    const { authorizeUrl, cookie } = await bot.beginInstall();
    const state = new URL(authorizeUrl).searchParams.get('state');
    const hostile = encodeURIComponent('"><script>alert(1)</script>https://evil.example');
    const address = `https://loadline.example.org/slack/oauth?error=${hostile}&state=${state}&next=${hostile}`;
    const { html } = await bot.comeBack(address, cookie);
    expect(html).not.toMatch(/script|evil\.example/);
  });

  it('sends nobody anywhere: it redirects never', async () => {
    const { authorizeUrl, cookie } = await bot.beginInstall();
    const address = `${bot.platform.agree(authorizeUrl, NORTH, 'U0ANA')}&redirect_uri=https://evil.example`;
    const { status, html } = await bot.comeBack(address, cookie);
    expect(status).toBe(200);
    expect(html).not.toContain('evil.example');
  });

  it('shows a workspace’s name as text', async () => {
    bot.platform.grantMore = { team: { id: NORTH, name: '<img src=x>North & "Co"' } };
    const { authorizeUrl, cookie } = await bot.beginInstall();
    const { html } = await bot.comeBack(bot.platform.agree(authorizeUrl, NORTH, 'U0ANA'), cookie);
    expect(html).toContain('&lt;img src=x&gt;North &amp; &quot;Co&quot;');
    expect(html).not.toContain('<img');
  });

  it.each([
    ['fewer scopes', { scope: 'chat:write,commands' }, 400, /were not granted: .*files:write/],
    ['the whole organisation', { is_enterprise_install: true, team: null }, 400, /workspace by workspace/],
    ['a token that expires', { access_token: 'xoxe.xoxb-1' }, 500, /Token rotation is switched on/],
    ['a refresh token', { refresh_token: 'xoxe-1-r' }, 500, /Token rotation is switched on/],
    ['a time after which it ends', { expires_in: 43_200 }, 500, /person who runs this bot has to create/],
    ['a token of a person', { token_type: 'user' }, 502, /platform didn’t answer/],
    ['something that is no bot’s token', { access_token: 'xoxp-1' }, 502, /platform didn’t answer/],
    [
      'the token of another workspace',
      { team: { id: 'T0ELSE', name: 'Else' } },
      502,
      /platform didn’t answer/,
    ],
    ['the token of another bot', { bot_user_id: 'U0OTHER' }, 502, /platform didn’t answer/],
  ])('with a grant of %s stores nothing and says so', async (_what, more, status, words) => {
    bot.platform.grantMore = more;
    const { authorizeUrl, cookie } = await bot.beginInstall();
    const page = await bot.comeBack(bot.platform.agree(authorizeUrl, NORTH, 'U0ANA'), cookie);
    expect(page.status).toBe(status);
    expect(page.html).toMatch(words);
    expect(await rowsIn('installations')).toEqual([]);
    expect(bot.log.text()).not.toMatch(/xoxe|xoxb-/);
    if (status === 500) expect(bot.log.text()).toMatch(/"level":"error".*tokens rotate/);
  });

  it.each([
    ['invalid_code', 400, /refused the code/],
    ['code_already_used', 400, /refused the code/],
    ['bad_client_secret', 500, /Its settings don’t fit its app/],
    ['bad_redirect_uri', 500, /Its settings don’t fit its app/],
  ])('when the platform answers %s says what to do', async (error, status, words) => {
    bot.platform.answers.set('oauth.v2.access', { ok: false, error });
    const { authorizeUrl, cookie } = await bot.beginInstall();
    const page = await bot.comeBack(bot.platform.agree(authorizeUrl, NORTH, 'U0ANA'), cookie);
    expect(page.status).toBe(status);
    expect(page.html).toMatch(words);
    if (status === 500) expect(bot.log.text()).toContain(error);
  });
});

describe('the pages', () => {
  it('answer GET only', async () => {
    for (const path of ['/slack/install', '/slack/oauth']) {
      expect((await fetch(`${bot.url}${path}`, { method: 'POST', body: 'x' })).status).toBe(404);
    }
    expect((await fetch(`${bot.url}/slack/install/`)).status).toBe(404);
  });
});

describe('a list of allowed workspaces', () => {
  const withList = (allowedWorkspaces: readonly string[]) =>
    ManyWorkspacesBot.start(database, START, { ...DISTRIBUTION, allowedWorkspaces });

  it('turns others away, stores nothing of them, and names the id to add', async () => {
    const strict = await withList([SOUTH]);
    try {
      const { authorizeUrl, cookie } = await strict.beginInstall();
      const page = await strict.comeBack(strict.platform.agree(authorizeUrl, NORTH, 'U0ANA'), cookie);
      expect(page.status).toBe(403);
      expect(page.html).toContain(`workspace’s id, ${NORTH},`);
      expect(await rowsIn('installations')).toEqual([]);
      expect(strict.log.text()).not.toContain('xoxb-');
      await strict.install(SOUTH);
      expect(await strict.workspaces.find(SOUTH)).toBeDefined();
    } finally {
      await strict.stop();
    }
  });

  it('lets in a workspace of an allowed organisation', async () => {
    const strict = await withList(['E0UNION']);
    try {
      strict.platform.grantMore = { enterprise: { id: 'E0UNION', name: 'Union' } };
      await strict.install(NORTH);
      expect(await strict.workspaces.find(NORTH)).toBeDefined();
    } finally {
      await strict.stop();
    }
  });

  it('holds for those who installed the bot before: their requests come to nothing', async () => {
    await bot.install(NORTH);
    await bot.setUpTeam(NORTH);
    const strict = await withList([SOUTH]);
    try {
      const standIn = strict.platform.standIn(NORTH);
      await standIn.command('U0ANA', 'C0TEAM', '/loadline setup');
      await strict.settle();
      expect(standIn.viewOf('U0ANA')).toBeUndefined();
      expect(strict.textsIn(NORTH, 'C0TEAM').join()).toContain('isn’t installed in this workspace');
    } finally {
      await strict.stop();
    }
  });
});
