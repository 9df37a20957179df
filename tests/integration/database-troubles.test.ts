/**
 * A Postgres server that takes nothing in for a while: without room, read-only, out of connections. Codes are those of
 * PostgreSQL's Appendix A.
 */
import postgres, { type Sql } from 'postgres';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { StoreTrouble } from '../../src/app/ports/store-trouble.ts';
import type { Database } from '../../src/store/database.ts';
import { openDatabase } from '../../src/store/open-database.ts';
import { sayCode } from '../../src/words/say.ts';
import { type OwnPostgres, withPostgres } from '../support/databases.ts';

const PATIENCE = { timeout: 30_000 };
const NOW = new Date('2026-11-02T09:00:00Z');

let own: OwnPostgres;
let admin: Sql;
let name: string;
let database: Database | undefined;
beforeEach(async () => {
  own = await withPostgres();
  admin = postgres(own.databaseUrl, { max: 1, onnotice: () => undefined });
  name = new URL(own.databaseUrl).pathname.slice(1);
});
afterEach(async () => {
  await admin.end();
  await database?.close();
  database = undefined;
  await own.drop();
});

async function open(databaseUrl = own.databaseUrl): Promise<Database> {
  database = await openDatabase({ databaseUrl, onBackgroundError: () => undefined });
  return database;
}

/** @returns the code of the trouble; `done` when there was none */
async function write(to: Database, eventId: string): Promise<string> {
  return to.store
    .transaction((tx) => tx.events.remember(eventId, NOW))
    .then(
      () => 'done',
      (error: unknown) => (error instanceof StoreTrouble ? error.code : String(error)),
    );
}

const cutAll = () => admin`select pg_terminate_backend(pid) from pg_stat_activity
  where datname = ${name} and pid <> pg_backend_pid()`;

/** A lost connection is another trouble, which its own tests are about. */
const settled = (to: Database, eventId: string) =>
  expect.poll(() => write(to, eventId), { ...PATIENCE, interval: 100 });

describe('a server that is read-only', () => {
  it('is said to be, and left for the new primary once there is one, though the old one keeps its connections', async () => {
    const to = await open();
    expect(await write(to, 'before')).toBe('done');
    // From here on each new connection is to a server that was the primary.
    await admin.unsafe(`alter database ${name} set default_transaction_read_only = on`);
    await cutAll();
    await settled(to, 'during').toBe('database-read-only');
    expect(await to.state('reading')).toMatchObject({ trouble: 'database-read-only' });
    // Who has one keeps it, and reads: only a new connection leads to the new primary.
    await admin.unsafe(`alter database ${name} reset default_transaction_read_only`);
    await settled(to, 'after').toBe('done');
    // What looks has a connection of its own, which may be renewed a moment later.
    const trouble = async () => (await to.state('writing')).trouble;
    await expect.poll(trouble, PATIENCE).toBeUndefined();
    const kept = await admin`select event_id from loadline.seen_events order by event_id`;
    expect(kept.map(({ event_id }) => event_id)).toEqual(['after', 'before']);
  }, 60_000);

  it('refuses a start in words of its own', async () => {
    await admin.unsafe(`alter database ${name} set default_transaction_read_only = on`);
    const error = await open().catch((refusal: unknown) => refusal);
    expect(error).toMatchObject({ code: 'database-read-only' });
    expect(sayCode('start', (error as { problem: never }).problem)).toContain('failover');
  });
});

describe('a server without room', () => {
  const withoutRoom = () =>
    admin.unsafe(`
      create function no_room() returns trigger language plpgsql as $$
        begin raise exception 'could not extend file: No space left on device' using errcode = '53100'; end $$;
      create trigger no_room before insert on loadline.seen_events for each row execute function no_room();`);

  it('is said to have none, keeps nothing of the transaction, and is used again as soon as there is some', async () => {
    const to = await open();
    await withoutRoom();
    expect(await write(to, 'during')).toBe('database-full');
    await expect(to.store.single.rememberEvent('alone', NOW)).rejects.toMatchObject({
      code: 'database-full',
    });
    // What was tried is remembered, so that to ask costs nothing.
    expect(await to.state('reading')).toMatchObject({ trouble: 'database-full' });
    await admin`drop trigger no_room on loadline.seen_events`;
    expect(await write(to, 'after')).toBe('done');
    expect(await to.store.read((read) => read.knowsEvent('during'))).toBe(false);
  });

  it('is found out by a look, before anybody wants to write', async () => {
    const to = await open();
    await withoutRoom();
    expect(await to.state('writing')).toMatchObject({ trouble: 'database-full' });
  });
});

describe('a server out of connections', () => {
  it('is said to be, and used again once there is one', async () => {
    const role = `r${name}`;
    const url = new URL(own.databaseUrl);
    Object.assign(url, { username: role, password: 'only-for-tests' });
    await admin.unsafe(`create role ${role} login superuser password 'only-for-tests'`);
    try {
      const to = await open(url.href);
      // Superusers have no limit.
      await admin.unsafe(`alter role ${role} nosuperuser connection limit 0`);
      await admin.unsafe(`grant usage on schema loadline to ${role}`);
      await admin.unsafe(`grant all on all tables in schema loadline to ${role}`);
      await cutAll();
      await settled(to, 'during').toBe('database-busy');
      expect(await to.state('reading')).toMatchObject({ trouble: 'database-busy' });
      await expect(openDatabase({ databaseUrl: url.href })).rejects.toMatchObject({ code: 'database-busy' });
      await admin.unsafe(`alter role ${role} connection limit -1`);
      await settled(to, 'after').toBe('done');
      expect(await to.state('reading')).toMatchObject({ trouble: undefined });
    } finally {
      await database?.close();
      database = undefined;
      await admin.unsafe(`drop owned by ${role}; drop role ${role}`);
    }
  }, 60_000);
});

it('says by how much the clocks differ', async () => {
  const to = await open();
  const { clockAheadMs } = await to.state('reading');
  expect(Math.abs(clockAheadMs)).toBeLessThan(10_000);
});
