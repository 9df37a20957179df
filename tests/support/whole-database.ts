/** Everything that a database holds, as text: every row of every table, the queue's included, to search in. */
import { sql } from 'drizzle-orm';
import type { Database } from '../../src/store/database.ts';
import { rowsOf } from './rows-of.ts';

/** A line for each row, beginning with its table. */
export async function wholeDatabase(database: Database): Promise<string[]> {
  const tables = await rowsOf<{ folder: string; name: string }>(
    database,
    sql`select table_schema as folder, table_name as name from information_schema.tables
      where table_type = 'BASE TABLE' and table_schema not in ('pg_catalog', 'information_schema') order by 1, 2`,
  );
  const linesOfEach = tables.map(
    ({ folder, name }) =>
      sql`select ${`${folder}.${name} `}::text || to_jsonb(t)::text as line
        from ${sql.identifier(folder)}.${sql.identifier(name)} as t`,
  );
  const rows = await rowsOf<{ line: string }>(database, sql.join(linesOfEach, sql` union all `));
  return rows.map(({ line }) => line);
}

/** The rows in which any of the words occurs, upper and lower case alike. */
export async function rowsWith(database: Database, words: readonly string[]): Promise<string[]> {
  const lines = await wholeDatabase(database);
  return lines.filter((line) => words.some((word) => line.toLowerCase().includes(word.toLowerCase())));
}
