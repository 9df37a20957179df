/** What the doctor says of databases in every state, real ones where that can be had. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import postgres from 'postgres';
import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest';
import { checkDatabase, judge } from '../../src/doctor/check-database.ts';
import { type Finding, findingWords, kindOf } from '../../src/doctor/finding.ts';
import type { DatabaseFacts } from '../../src/store/database-facts.ts';
import { openDatabase } from '../../src/store/open-database.ts';
import type { SetAsidePost } from '../../src/store/queue/set-aside-posts.ts';
import { type OwnPostgres, withPostgres } from '../support/databases.ts';

const NOW = new Date('2026-11-04T09:20:00Z');
const WELL: DatabaseFacts = {
  serverVersion: 18,
  databaseNow: NOW,
  ownNow: NOW,
  encoding: 'UTF8',
  migrations: { appliedCount: 3, pendingCount: 0, isAhead: false, isForeign: false },
  writeRefusal: undefined,
  encryption: 'verified',
  freeConnections: 100,
  queue: { waitingCount: 0, oldestSeconds: 0, givenUpCount: 0, heldBackCount: 0 },
  setAside: [],
};

const post = (reason: SetAsidePost['reason'], lastError: string): SetAsidePost => ({
  id: 'of-the-test',
  kind: 'verdict',
  workspaceId: 'T1',
  channelId: 'C1',
  reason,
  lastError,
});

const brief = (findings: readonly Finding[]): string[] =>
  findings.map((finding) => `${kindOf(finding).level}: ${findingWords(finding)}`);
const notOk = (findings: readonly Finding[]): string[] =>
  brief(findings).filter((line) => !line.startsWith('ok'));

describe('what is said of a database', () => {
  it('is that all is well, when it is', () => {
    expect(notOk(judge(WELL))).toEqual([]);
  });

  it.each<[string, Partial<DatabaseFacts>, RegExp]>([
    [
      'that has posts waiting for a quarter of an hour',
      { queue: { waitingCount: 4, oldestSeconds: 901, givenUpCount: 0, heldBackCount: 0 } },
      /^warning: 4 posts are waiting .* 15 minutes/,
    ],
    [
      'with posts that were given up',
      { setAside: [post('failed', 'http_503'), post('failed', 'ECONNRESET')] },
      /^warning: 2 posts were not delivered although .* an hour \(ECONNRESET, http_503\).*the log.*retry all/,
    ],
    [
      'with posts to channels that are closed',
      { setAside: [post('refused', 'is_archived'), post('refused', 'is_archived')] },
      /^warning: 2 posts were not delivered because the channel .* closed to the bot \(is_archived\)/,
    ],
    [
      'with a post that the workspace doesn’t allow',
      { setAside: [post('refused', 'missing_scope')] },
      /^warning: 1 post was not delivered because the workspace doesn’t allow it \(missing_scope\)/,
    ],
    [
      'with a post for which the token is void',
      { setAside: [post('refused', 'token_revoked')] },
      /^warning: 1 post was not .*void \(token_revoked\)\. Install the app/,
    ],
    [
      'with a post to somebody who is gone',
      { setAside: [post('refused', 'user_disabled')] },
      /^warning: 1 post was not .*can’t be written to \(user_disabled\).*off the team/,
    ],
    [
      'with a post that was faulty',
      { setAside: [post('refused', 'invalid_blocks')] },
      /^warning: 1 post was not .*faulty \(invalid_blocks\).*report/,
    ],
    ['that is nearly out of connections', { freeConnections: 19 }, /^warning: The server has 19 connections/],
    [
      'whose clock is off',
      { databaseNow: new Date(NOW.getTime() + 31_000) },
      /^warning: .*31 s behind that of the database/,
    ],
  ])('%s: what to look at', (_which, facts, words) => {
    expect(notOk(judge({ ...WELL, ...facts }))).toEqual([expect.stringMatching(words)]);
  });

  it('has a line for each cause of undelivered posts', () => {
    const setAside = [
      post('refused', 'is_archived'),
      post('failed', 'http_500'),
      post('refused', 'not_in_channel'),
    ];
    const lines = notOk(judge({ ...WELL, setAside }));
    expect(lines).toEqual([
      expect.stringMatching(/^warning: 2 posts .*\(is_archived, not_in_channel\)/),
      expect.stringMatching(/^warning: 1 post .*\(http_500\)/),
    ]);
  });

  it('does not raise an alarm at the limits themselves', () => {
    const queue = { waitingCount: 4, oldestSeconds: 900, givenUpCount: 0, heldBackCount: 0 };
    const databaseNow = new Date(NOW.getTime() - 30_000);
    expect(notOk(judge({ ...WELL, queue, databaseNow, freeConnections: 20 }))).toEqual([]);
  });
});

describe('a Postgres', () => {
  let own: OwnPostgres;
  beforeEach(async () => {
    own = await withPostgres('nothing');
  });
  afterEach(() => own.drop());

  async function run(...statements: string[]): Promise<void> {
    const client = postgres(own.databaseUrl, { max: 1, onnotice: () => undefined });
    for (const statement of statements) await client.unsafe(statement);
    await client.end();
  }
  const check = (databaseUrl = own.databaseUrl) =>
    checkDatabase({ databaseUrl, dataFolder: 'unused' }).then(notOk);
  const migrated = async (): Promise<void> => (await own.open()).close();

  it('that lacks the newest migration will get it from the next start', async () => {
    await migrated();
    await run(
      'delete from loadline.migrations where created_at = (select max(created_at) from loadline.migrations)',
    );
    expect(await check()).toEqual([expect.stringMatching(/^warning: 1 migration is not yet applied\./)]);
  });

  it('that a newer version has been at is named, for an older one may only stay for the upgrade', async () => {
    await migrated();
    await run("insert into loadline.migrations (hash, created_at) values ('later', 9999999999999)");
    expect(await check()).toEqual([expect.stringMatching(/^warning: .* by a newer version/)]);
  });

  it('with a migration other than ours is not to be run on', async () => {
    await migrated();
    await run("update loadline.migrations set hash = 'edited' where id = 1");
    expect(await check()).toEqual([
      expect.stringMatching(/^fix: The migrations .* not those of this version/),
    ]);
  });

  it('that is read-only is told apart from one that lacks rights', async () => {
    await migrated();
    const name = new URL(own.databaseUrl).pathname.slice(1);
    const reader = `reader_${name}`;
    await run(`create role ${reader} login password 'only-for-tests'`);
    const asReader = new URL(own.databaseUrl);
    asReader.username = reader;
    asReader.password = 'only-for-tests';
    try {
      await run(
        `grant usage on schema loadline, pgboss to ${reader}`,
        `grant select on all tables in schema loadline, pgboss to ${reader}`,
      );
      expect(await check(asReader.href)).toEqual([
        expect.stringMatching(/^fix: The database user may not write to the tables \(42501\)\./),
      ]);
      await run(`alter database ${name} set default_transaction_read_only = on`);
      expect(await check()).toEqual([expect.stringMatching(/^fix: The database is read-only\./)]);
    } finally {
      await run('set default_transaction_read_only = off', `drop owned by ${reader}`, `drop role ${reader}`);
    }
  });

  it('that has no room left is told apart from one that lacks rights', async () => {
    await migrated();
    await run(
      `create function no_room() returns trigger language plpgsql as $$
        begin raise exception 'could not extend file' using errcode = '53100'; end $$`,
      'create trigger no_room before insert on loadline.seen_events for each row execute function no_room()',
    );
    expect(await check()).toEqual([expect.stringMatching(/^fix: The disk of the database is full\./)]);
  });

  it('in which the user may not make schemas can not be begun with', async () => {
    const name = new URL(own.databaseUrl).pathname.slice(1);
    const guest = `guest_${name}`;
    await run(`create role ${guest} login password 'only-for-tests'`);
    const asGuest = new URL(own.databaseUrl);
    asGuest.username = guest;
    asGuest.password = 'only-for-tests';
    try {
      expect(await check(asGuest.href)).toEqual([
        expect.stringMatching(/^fix: The database user may not create schemas \(42501\)\./),
      ]);
    } finally {
      await run(`drop role ${guest}`);
    }
  });

  it('that can not hold everybody’s letters is not to be used', async () => {
    const name = `ascii_${new URL(own.databaseUrl).pathname.slice(1)}`;
    await run(`create database ${name} encoding 'SQL_ASCII' template template0`);
    const url = new URL(own.databaseUrl);
    url.pathname = name;
    try {
      expect(await check(url.href)).toEqual([
        expect.stringMatching(/^fix: The database is encoded in SQL_ASCII/),
      ]);
    } finally {
      await run(`drop database ${name}`);
    }
  });

  it('that is not there is told apart from one that does not answer', async () => {
    const missing = new URL(own.databaseUrl);
    missing.pathname = 'nowhere';
    expect(await check(missing.href)).toEqual([expect.stringMatching(/^fix: .*there is no database/)]);
    const deaf = new URL(own.databaseUrl);
    deaf.port = '1';
    expect(await check(deaf.href)).toEqual([expect.stringMatching(/^fix: .*can’t be reached/)]);
  });

  it('is left as it was: no schema, no row', async () => {
    await check();
    await migrated();
    await check();
    const client = postgres(own.databaseUrl, { max: 1 });
    const [row] = await client`select (select count(*)::integer from loadline.seen_events) as events,
      to_regnamespace('loadline_doctor_was_here') is null as is_clean`;
    await client.end();
    expect(row).toEqual({ events: 0, is_clean: true });
    expect(inject('postgresUrl')).not.toBe(own.databaseUrl);
  });
});

describe('a data folder', () => {
  let folder: string;
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'loadline-facts-'));
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));
  const check = () => checkDatabase({ databaseUrl: undefined, dataFolder: folder });

  it('is looked into while no bot runs on it, and left alone while one does', async () => {
    expect(brief(await check())).toEqual([expect.stringMatching(/^ok: None yet/)]);
    const database = await openDatabase({ dataFolder: folder });
    expect(brief(await check())).toEqual([expect.stringMatching(/^ok: In use by a running bot/)]);
    await database.close();
    const after = await check();
    expect(notOk(after)).toEqual([]);
    expect(brief(after)).toContainEqual(expect.stringMatching(/migrations are applied/));
  });

  it('that holds no database any more must be restored', async () => {
    await mkdir(join(folder, 'database'));
    await writeFile(join(folder, 'database', 'PG_VERSION'), 'broken');
    expect(notOk(await check())).toEqual([expect.stringMatching(/^fix: The database in the data folder/)]);
  });
});
