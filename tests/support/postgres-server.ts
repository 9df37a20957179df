/**
 * One real Postgres for the whole test run. When it cannot start, the run fails: tests on it are never skipped.
 */
import postgres from 'postgres';
import type { TestProject } from 'vitest/node';
import { openDatabase } from '../../src/store/open-database.ts';
import { startPostgres } from './postgres-process.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the server's own database, as a user who may create others. */
    postgresUrl: string;
  }
}

/** A database that is up to date and holds nothing: to copy it is much quicker than to migrate another. */
export const NEW_DATABASE = 'loadline_new';

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await startPostgres();
  const client = postgres(server.urlOf(), { max: 1 });
  await client.unsafe(`create database ${NEW_DATABASE}`);
  await client.end();
  await (await openDatabase({ databaseUrl: server.urlOf(NEW_DATABASE) })).close();
  project.provide('postgresUrl', server.urlOf());
  return () => server.remove();
}
