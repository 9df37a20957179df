/** Databases for tests, up to date and with nothing in them. */
import { randomUUID } from 'node:crypto';
import { sql } from 'drizzle-orm';
import postgres from 'postgres';
import { beforeAll, describe, inject } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { makeImage } from '../../src/store/embedded/make-data-folder-image.ts';
import { openDatabase } from '../../src/store/open-database.ts';
import { NEW_DATABASE } from './postgres-server.ts';
import { share } from './search-width.ts';

/** A background error in a test is a failure, not something to note and forget. */
function onBackgroundError(error: Error): void {
  throw error;
}

/** An image of a PGlite database as it is when new: to make one takes seconds, so it is kept for the next run. */
export async function newPgliteImage(): Promise<Blob> {
  return makeImage();
}

export interface OwnPostgres {
  readonly databaseUrl: string;
  /** Opens it; several times for several replicas. The caller closes each. */
  open(): Promise<Database>;
  /** Removes the database, even while somebody is connected. */
  drop(): Promise<void>;
}

/** A new database on the test run's Postgres server: a copy of one that is up to date, or one with nothing in it. */
export async function withPostgres(content: 'migrated' | 'nothing' = 'migrated'): Promise<OwnPostgres> {
  const serverUrl = inject('postgresUrl');
  const name = `test_${randomUUID().replaceAll('-', '')}`;
  const onServer = async (statement: string) => {
    const client = postgres(serverUrl, { max: 1 });
    await client.unsafe(statement);
    await client.end();
  };
  await onServer(`create database ${name} template ${content === 'migrated' ? NEW_DATABASE : 'template1'}`);
  const url = new URL(serverUrl);
  url.pathname = `/${name}`;
  const databaseUrl = url.href;
  return {
    databaseUrl,
    open: () => openDatabase({ databaseUrl, onBackgroundError }),
    drop: () => onServer(`drop database ${name} with (force)`),
  };
}

type DatabaseKind = 'PGlite' | 'Postgres';

const OPENING = {
  PGlite: async () =>
    openDatabase({ dataFolder: 'memory', memoryImage: await newPgliteImage(), onBackgroundError }),
  Postgres: async () => (await withPostgres()).open(),
};

const shared = new Map<DatabaseKind, Promise<Database>>();

/**
 * The database of this kind that all test files of a worker process share, one after the other, with nothing in it. It
 * stays open until the process ends.
 */
export async function emptyDatabase(kind: DatabaseKind): Promise<Database> {
  const opening = shared.get(kind) ?? OPENING[kind]();
  shared.set(kind, opening);
  const database = await opening;
  await database.session.execute(DELETE_EVERYTHING);
  return database;
}

/** The database guards its records against this, as it should outside of tests. Truncating takes ten times as long. */
const DELETE_EVERYTHING = sql`do $$
  declare name text;
  begin
    set local session_replication_role = replica;
    for name in select tablename from pg_tables where schemaname = 'loadline' and tablename <> 'migrations' loop
      execute format('delete from loadline.%I', name);
    end loop;
    delete from pgboss.job;
  end $$`;

const KINDS: readonly DatabaseKind[] = ['PGlite', 'Postgres'];

type TestsOfKind = (database: () => Database, kind: DatabaseKind) => void;

function describeOn(kinds: readonly DatabaseKind[], name: string, tests: TestsOfKind): void {
  describe.each(kinds)(`${name} (%s)`, (kind) => {
    let database: Database;
    beforeAll(async () => {
      database = await emptyDatabase(kind);
    });
    tests(() => database, kind);
  });
}

/** Runs the same tests on both kinds of database; what one of them writes is there for the next. */
export function describeOnBoth(name: string, tests: TestsOfKind): void {
  describeOn(KINDS, name, tests);
}

/** On Postgres, and on PGlite too when the search is widened: for tests that take PGlite minutes. */
export function describeOnPostgresFirst(name: string, tests: TestsOfKind): void {
  describeOn(share(KINDS.toReversed(), KINDS.length), name, tests);
}
