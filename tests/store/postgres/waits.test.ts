/** What the store waits for on a server, and what it does not. */
import postgres from 'postgres';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Database } from '../../../src/store/database.ts';
import { openDatabase } from '../../../src/store/open-database.ts';
import { type PostgresProcess, startPostgres } from '../../support/postgres-process.ts';

let server: PostgresProcess;
let database: Database;
let operator: postgres.Sql;
beforeAll(async () => {
  server = await startPostgres();
  operator = postgres(server.urlOf(), { max: 2, onnotice: () => undefined });
  database = await openDatabase({ databaseUrl: server.urlOf(), onBackgroundError: () => undefined });
});
afterAll(async () => {
  await database.close();
  await operator.end();
  await server.remove();
});

const AT = new Date('2026-03-02T09:00:00Z');

test('an event is remembered without waiting until it is safe, unless something is written with it', async () => {
  const { store } = database;
  // From now on no commit is safe until another server has it, and there is none.
  await operator`alter system set synchronous_standby_names = 'nobody'`;
  await operator`select pg_reload_conf()`;
  await expect
    .poll(async () => (await operator`show synchronous_standby_names`)[0]?.synchronous_standby_names)
    .toBe('nobody');
  expect(await store.single.rememberEvent('Ev-1', AT)).toBe(true);
  expect(await store.single.rememberEvent('Ev-1', AT)).toBe(false);
  const safe = store.transaction((tx) => tx.events.remember('Ev-2', AT));
  await expect
    .poll(async () => (await operator`select from pg_stat_activity where wait_event = 'SyncRep'`).length)
    .toBe(1);
  await operator`alter system reset synchronous_standby_names`;
  await operator`select pg_reload_conf()`;
  expect(await safe).toBe(true);
});

test('who reads a table that is being changed waits for it longer than for a team', async () => {
  const isHeld = Promise.withResolvers<void>();
  const letGo = Promise.withResolvers<void>();
  const changing = operator.begin(async (sql) => {
    await sql`lock table loadline.seen_events in access exclusive mode`;
    isHeld.resolve();
    await letGo.promise;
  });
  await isHeld.promise;
  const known = database.store.read((read) => read.knowsEvent('Ev-1'));
  const patient = () => operator`select from pg_stat_activity
    where wait_event_type = 'Lock' and query_start > xact_start`;
  // It has given up once, and waits again in a transaction of its own.
  await expect.poll(async () => (await patient()).length, { timeout: 10_000 }).toBe(1);
  letGo.resolve();
  expect(await known).toBe(true);
  await changing;
});
