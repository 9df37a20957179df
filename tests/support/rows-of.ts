import type { SQL } from 'drizzle-orm';
import type { Database } from '../../src/store/database.ts';

/** The rows of a raw statement, from either driver. */
export async function rowsOf<Row>({ session }: Pick<Database, 'session'>, statement: SQL): Promise<Row[]> {
  const result: unknown = await session.execute(statement);
  return (Array.isArray(result) ? result : (result as { rows: unknown[] }).rows) as Row[];
}
