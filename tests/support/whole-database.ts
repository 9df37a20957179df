/** Everything that a database holds, as text: every row of every table, the queue's included, to search in. */
import { sql } from 'drizzle-orm';
import type { Database } from '../../src/store/database.ts';
import { rowsOf } from './app-harness.ts';

/** A line for each row, beginning with its table. */
export async function wholeDatabase({ session }: Database): Promise<string[]> {
  const tables = rowsOf<{ folder: string; name: string }>(
    await session.execute(sql`select table_schema as folder, table_name as name from information_schema.tables
      where table_type = 'BASE TABLE' and table_schema not in ('pg_catalog', 'information_schema') order by 1, 2`),
  );
  const lines: string[] = [];
  for (const { folder, name } of tables) {
    const rows = rowsOf<{ text: string }>(
      await session.execute(
        sql`select to_jsonb(t)::text as text from ${sql.identifier(folder)}.${sql.identifier(name)} as t`,
      ),
    );
    lines.push(...rows.map(({ text }) => `${folder}.${name} ${text}`));
  }
  return lines;
}

/** The rows in which any of the words stands, upper and lower case alike. */
export async function rowsWith(database: Database, words: readonly string[]): Promise<string[]> {
  const lines = await wholeDatabase(database);
  return lines.filter((line) => words.some((word) => line.toLowerCase().includes(word.toLowerCase())));
}
