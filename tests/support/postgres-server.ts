/**
 * One real Postgres for the whole test run. When it cannot start, the run fails: tests on it are never skipped.
 */
import type { TestProject } from 'vitest/node';
import { startPostgres } from './postgres-process.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the server's own database, as a user who may create others. */
    postgresUrl: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await startPostgres();
  project.provide('postgresUrl', server.urlOf());
  return () => server.remove();
}
