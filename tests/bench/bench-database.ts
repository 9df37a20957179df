/** Databases for benches: on a real Postgres of the run's own, with the settings that a new server has. */
import { randomUUID } from 'node:crypto';
import postgres from 'postgres';
import type { Database } from '../../src/store/database.ts';
import { openDatabase } from '../../src/store/open-database.ts';
import { startPostgres } from '../support/postgres-process.ts';

/** A commit is on disk before it is acknowledged, as an operator's is. */
const DURABLE = { fsync: 'on', full_page_writes: 'on' };

export interface BenchDatabases {
  /** A new, empty database. */
  create(): Promise<string>;
  stop(): Promise<void>;
}

/** @param settings of the server, beside its own defaults */
export async function startBenchDatabases(
  settings: Readonly<Record<string, string>> = {},
): Promise<BenchDatabases> {
  const server = await startPostgres({ ...DURABLE, ...settings });
  return {
    async create() {
      const name = `bench_${randomUUID().replaceAll('-', '')}`;
      await onServer(server.urlOf(), `create database ${name}`);
      return server.urlOf(name);
    },
    stop: () => server.remove(),
  };
}

async function onServer(url: string, statement: string): Promise<void> {
  const client = postgres(url, { max: 1 });
  await client.unsafe(statement);
  await client.end();
}

/** Opens it with its tables. The caller closes it. */
export function openBenchDatabase(databaseUrl: string): Promise<Database> {
  return openDatabase({
    databaseUrl,
    onBackgroundError: (error) => {
      throw error;
    },
  });
}
