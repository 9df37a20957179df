/** What every query module works on: a drizzle session over either driver, inside a transaction unless it only reads. */
import type { PgDatabase, PgQueryResultHKT } from 'drizzle-orm/pg-core';
import type { Sql } from 'postgres';

export type SqlSession = PgDatabase<PgQueryResultHKT, Record<string, never>>;

export type DirectClient = Pick<Sql, 'unsafe'>;

/** The driver below the session, unless it is PGlite's: past drizzle an answer takes a twentieth less processor time. */
export function directClient(session: SqlSession): DirectClient | undefined {
  const { client } = session._.session as unknown as { readonly client?: Partial<DirectClient> };
  return client?.unsafe ? (client as DirectClient) : undefined;
}

/**
 * Rows as one parameter, which costs a fraction of one for each cell. Half a character, which only a forged request has, is
 * no text to the database.
 */
export function rowsAsJson(rows: readonly object[]): string {
  return JSON.stringify(rows, (_name, value: unknown) =>
    typeof value === 'string' ? value.toWellFormed() : value,
  );
}

/** Rows that go into one INSERT: far below the driver's limit of 65,535 parameters a statement. */
const ROWS_A_STATEMENT = 2_000;

/** The rows in pieces that fit one statement; no piece when there is no row. */
export function statementsOf<Row>(rows: readonly Row[]): Row[][] {
  return Array.from({ length: Math.ceil(rows.length / ROWS_A_STATEMENT) }, (_, i) =>
    rows.slice(i * ROWS_A_STATEMENT, (i + 1) * ROWS_A_STATEMENT),
  );
}
