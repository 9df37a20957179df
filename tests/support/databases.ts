/** Databases for tests: each has its own, empty but for the migrations, and is gone afterwards. */
import { randomUUID } from 'node:crypto';
import postgres from 'postgres';
import { afterAll, beforeAll, describe, inject } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { makeImage } from '../../src/store/embedded/make-data-folder-image.ts';
import { openDatabase } from '../../src/store/open-database.ts';

/** A background error in a test is a failure, not something to note and forget. */
function onBackgroundError(error: Error): void {
  throw error;
}

/** An image of a PGlite database as it is when new: to make one takes seconds, so it is kept for the next run. */
export async function newPgliteImage(): Promise<Blob> {
  return makeImage();
}

/** A PGlite database in memory. The caller closes it. */
export async function withPglite(): Promise<Database> {
  return openDatabase({ dataFolder: 'memory', memoryImage: await newPgliteImage(), onBackgroundError });
}

export interface OwnPostgres {
  readonly databaseUrl: string;
  /** Opens it; several times for several replicas. The caller closes each. */
  open(): Promise<Database>;
  /** Removes the database, whoever is still connected. */
  drop(): Promise<void>;
}

/** A new database on the test run's Postgres server. */
export async function withPostgres(): Promise<OwnPostgres> {
  const serverUrl = inject('postgresUrl');
  const name = `test_${randomUUID().replaceAll('-', '')}`;
  const onServer = async (statement: string) => {
    const client = postgres(serverUrl, { max: 1 });
    await client.unsafe(statement);
    await client.end();
  };
  await onServer(`create database ${name}`);
  const url = new URL(serverUrl);
  url.pathname = `/${name}`;
  const databaseUrl = url.href;
  return {
    databaseUrl,
    open: () => openDatabase({ databaseUrl, onBackgroundError }),
    drop: () => onServer(`drop database ${name} with (force)`),
  };
}

/** Runs the same tests on both kinds of database, each with one that its tests share. */
export function describeOnBoth(name: string, tests: (database: () => Database) => void): void {
  describe.each(['PGlite', 'Postgres'] as const)(`${name} (%s)`, (kind) => {
    let database: Database;
    let drop = async (): Promise<void> => undefined;
    beforeAll(async () => {
      if (kind === 'PGlite') {
        database = await withPglite();
      } else {
        const own = await withPostgres();
        drop = own.drop;
        database = await own.open();
      }
    });
    afterAll(async () => {
      await database?.close();
      await drop();
    });
    tests(() => database);
  });
}
