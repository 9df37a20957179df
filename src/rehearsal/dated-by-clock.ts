/** What the database dates by itself when it is recorded, it dates in a rehearsal by the rehearsal's clock. */
import { sql } from 'drizzle-orm';
import type { Database } from '../store/database.ts';

const DATED = ['teams.created_at', 'sprints.created_at', 'posts.created_at', 'plan_drafts.saved_at'];

/** @returns sets the database's clock; it has one connection, which keeps that */
export async function datedByClock(
  { session }: Pick<Database, 'session'>,
  start: Date,
): Promise<(now: Date) => Promise<void>> {
  const set = async (now: Date): Promise<void> => {
    await session.execute(sql`select set_config('loadline.now', ${now.toISOString()}, false)`);
  };
  await set(start);
  await session.execute(sql`create function loadline.rehearsed_now() returns timestamptz
    language sql stable as $$ select current_setting('loadline.now')::timestamptz $$`);
  for (const dated of DATED) {
    const [table = '', column = ''] = dated.split('.');
    await session.execute(sql`alter table loadline.${sql.identifier(table)}
      alter column ${sql.identifier(column)} set default loadline.rehearsed_now()`);
  }
  return set;
}
