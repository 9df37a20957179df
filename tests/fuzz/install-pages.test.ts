/**
 * What strangers send to the pages on which the bot is installed, and odd answers of the platform to what was brought back:
 * a page in words, nothing stored, nothing of it shown, and no page that says that the bot itself failed.
 */
import { sql } from 'drizzle-orm';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { emptyDatabase } from '../support/databases.ts';
import { ManyWorkspacesBot, NORTH } from '../support/many-workspaces-bot.ts';
import { rowsOf } from '../support/rows-of.ts';
import { search } from '../support/search-width.ts';
import { exchange } from './raw-http.ts';

const SEED = 20261128;
const MARK = '"><script>alert(1)</script>';

let database: Database;
let bot: ManyWorkspacesBot;
beforeEach(async () => {
  database = await emptyDatabase('Postgres');
  bot = await ManyWorkspacesBot.start(database, '2026-11-02T08:00:00Z');
  // From where a signed request has come, nobody is barred, in however many ways a test tries.
  await bot.send({ type: 'url_verification', challenge: 'c' });
});
afterEach(() => bot.stop());

async function expectNothingStored(): Promise<void> {
  expect(await rowsOf(database, sql`select * from loadline.installations`)).toEqual([]);
}

const secretLike = fc.string({ unit: fc.constantFrom(...'aZ09_-'), minLength: 43, maxLength: 43 });
const value = fc.oneof(
  secretLike,
  fc.string({ unit: 'binary' }),
  fc.constantFrom(MARK, '', '%', '%00', '%ff%fe', '+', '=;='),
);
const pair = fc.tuple(fc.constantFrom('state', 'code', 'error', 'state[]', '__proto__', 'x'), value);

describe('what strangers bring to the page of the return', () => {
  it('is refused in words, with anything in the address and the cookie', async () => {
    const query = fc.array(
      pair.map(([name, text]) => `${name}=${encodeURIComponent(text.toWellFormed())}`),
      { maxLength: 5 },
    );
    const cookie = fc.oneof(
      value.map((text) => `__Host-loadline-install=${encodeURIComponent(text.toWellFormed())}`),
      secretLike.map((text) => `__Host-loadline-install=${text}; __Host-loadline-install=${text}`),
      fc.constantFrom('=', ';;;', '__Host-loadline-install', `a=${MARK}`),
    );
    await fc.assert(
      fc.asyncProperty(query, cookie, async (pairs, given) => {
        const answer = await fetch(`${bot.url}/slack/oauth?${pairs.join('&')}`, {
          headers: { cookie: given },
          redirect: 'manual',
        });
        expect(answer.status).toBe(400);
        const html = await answer.text();
        expect(html).toContain('This link no longer works');
        expect(html).not.toContain('<script');
      }),
      search(100, SEED),
    );
    await expectNothingStored();
  });

  it('is refused or unheard when it is no address at all', async () => {
    const port = Number(new URL(bot.url).port);
    const bytes = fc.uint8Array({ maxLength: 200 });
    const path = fc.constantFrom('/slack/oauth', '/slack/install/', '/slack/oauth#', '//slack/oauth');
    await fc.assert(
      fc.asyncProperty(path, bytes, async (start, rest) => {
        const head = Buffer.concat([
          Buffer.from(`GET ${start}?`),
          rest,
          Buffer.from(' HTTP/1.1\r\nhost: b\r\n\r\n'),
        ]);
        const { statuses } = await exchange(port, head, 'end');
        for (const status of statuses) expect(status).toSatisfy((code) => code >= 400 && code < 500);
      }),
      search(100, SEED),
    );
    await expectNothingStored();
  });
});

it('asks the platform about few codes at one time, however many are brought', async () => {
  const held = Promise.withResolvers<void>();
  bot.platform.grantsHeld = held.promise;
  const begun = await Promise.all(Array.from({ length: 20 }, () => bot.beginInstall()));
  const pages = begun.map(({ authorizeUrl, cookie }) =>
    bot.comeBack(bot.platform.agree(authorizeUrl, NORTH, 'U0BEN'), cookie),
  );
  let answered = 0;
  for (const page of pages) {
    page.then(
      () => {
        answered += 1;
      },
      () => undefined,
    );
  }
  await expect.poll(() => answered, { timeout: 10_000 }).toBe(15);
  expect(bot.platform.grantsAsked).toBe(5);
  held.resolve();
  const statuses = (await Promise.all(pages)).map(({ status }) => status);
  expect(statuses.filter((status) => status === 200)).toHaveLength(5);
  expect(statuses.filter((status) => status === 502)).toHaveLength(15);
});

describe('what the platform answers to a code', () => {
  const odd = fc
    .oneof(
      fc.jsonValue(),
      fc.record({ ok: fc.constant(false), error: fc.string({ unit: 'binary', maxLength: 50 }) }),
      fc.record(
        {
          ok: fc.constant(true),
          access_token: fc.oneof(fc.constant('xoxb-1'), fc.string()),
          token_type: fc.constantFrom('bot', 'user'),
          scope: fc.oneof(fc.constant(MARK), fc.string({ unit: 'binary' })),
          bot_user_id: fc.oneof(fc.constant('U0LOADLINE'), fc.string()),
          team: fc.oneof(
            fc.record({ id: fc.constant(NORTH), name: fc.string({ unit: 'binary' }) }),
            fc.jsonValue(),
          ),
          enterprise: fc.jsonValue(),
          authed_user: fc.jsonValue(),
        },
        { requiredKeys: ['ok'] },
      ),
    )
    .filter((answer): answer is object => typeof answer === 'object' && answer !== null);

  it('ends in words without an installation when it is no grant', async () => {
    await fc.assert(
      fc.asyncProperty(odd, async (answer) => {
        bot.platform.answers.set('oauth.v2.access', answer);
        const { authorizeUrl, cookie } = await bot.beginInstall();
        const page = await bot.comeBack(bot.platform.agree(authorizeUrl, NORTH, 'U0BEN'), cookie);
        // 500: the settings do not fit the app, as the platform says; 502: it answered with something else.
        expect([400, 500, 502]).toContain(page.status);
        expect(page.html).not.toContain('Something went wrong');
        expect(page.html).not.toContain('<script');
      }),
      search(50, SEED),
    );
    await expectNothingStored();
  });

  it('may give the workspace any name', async () => {
    const { grantMore } = bot.platform;
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(fc.constant(MARK), fc.string({ unit: 'binary', maxLength: 100 })),
        async (name) => {
          bot.platform.grantMore = { team: { id: NORTH, name } };
          const { authorizeUrl, cookie } = await bot.beginInstall();
          const page = await bot.comeBack(bot.platform.agree(authorizeUrl, NORTH, 'U0BEN'), cookie);
          expect(page.status).toBe(200);
          expect(page.html).not.toContain('<script');
        },
      ),
      search(25, SEED),
    );
    bot.platform.grantMore = grantMore;
  });
});
