/** Whether the database lets itself be written to: tries, and takes it back. */
import { sql } from 'drizzle-orm';
import type { SqlSession } from './queries/sql-session.ts';
import { QUEUE_SCHEMA } from './queue/job-sender.ts';
import { sqlErrorOf } from './sql-error.ts';

class RolledBack extends Error {}

/**
 * @param hasTables whether the bot has ever started on it
 * @returns the SQLSTATE with which it was refused; undefined when it was not
 */
export async function writeRefusal(session: SqlSession, hasTables: boolean): Promise<string | undefined> {
  try {
    await session.transaction(async (tx) => {
      if (hasTables) {
        await tx.execute(sql`insert into loadline.seen_events (event_id, seen_at)
          values ('probe:' || gen_random_uuid(), now())`);
        // Nobody may write there but through the queue; that it could is enough.
        await tx.execute(sql`select 1 / has_table_privilege(${`${QUEUE_SCHEMA}.job`}, 'insert')::integer
          where to_regclass(${`${QUEUE_SCHEMA}.job`}) is not null`);
      } else {
        await tx.execute(sql`create schema loadline_doctor_was_here`);
      }
      throw new RolledBack();
    });
    return undefined;
  } catch (error) {
    if (error instanceof RolledBack) return undefined;
    const sqlState = sqlErrorOf(error)?.sqlState;
    if (sqlState === undefined) throw error;
    return sqlState;
  }
}
