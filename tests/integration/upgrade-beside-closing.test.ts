/** A replica of the version before is closing a sprint at the moment in which the new one brings the database up to date. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { drizzle } from 'drizzle-orm/postgres-js';
import { migrate } from 'drizzle-orm/postgres-js/migrator';
import postgres from 'postgres';
import { expect, it } from 'vitest';
import { MIGRATIONS } from '../../src/store/migrate.ts';
import { withPostgres } from '../support/databases.ts';
import { migrationsBefore } from '../support/migrations-before.ts';

/** Triggers on the tables that a closing writes. */
const MIGRATION = '0007_past_changes';

it('both come through: the one waits for the other', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'loadline-upgrade-'));
  const own = await withPostgres('nothing');
  const [ofOld, ofNew, onlooker] = [0, 1, 2].map(() =>
    postgres(own.databaseUrl, { max: 1, onnotice: () => undefined }),
  ) as [postgres.Sql, postgres.Sql, postgres.Sql];
  try {
    await migrate(drizzle(ofNew), await migrationsBefore(MIGRATION, folder));
    let upgraded: Promise<void> | undefined;
    await ofOld.begin(async (closing) => {
      // The locks of a closing, in its order (`app/closing/end-sprint.ts`).
      await closing`update loadline.sprints set state = state where false`;
      upgraded = migrate(drizzle(ofNew), MIGRATIONS);
      const waiting = async () =>
        (
          await onlooker`select count(*)::integer as count from pg_locks where not granted
            and database = (select oid from pg_database where datname = current_database())`
        )[0]?.count;
      await expect.poll(waiting).toBe(1);
      await closing`delete from loadline.past_sprints where false`;
    });
    await upgraded;
    expect(await onlooker`select from loadline.past_changes`).toEqual([]);
  } finally {
    await Promise.all([ofOld, ofNew, onlooker].map((client) => client.end()));
    await own.drop();
    await rm(folder, { recursive: true, force: true });
  }
});
