/** A replica of the version before is closing a sprint at the moment in which the new one brings the database up to date. */
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { drizzle } from 'drizzle-orm/postgres-js';
import { migrate } from 'drizzle-orm/postgres-js/migrator';
import postgres from 'postgres';
import { expect, it } from 'vitest';
import { MIGRATIONS } from '../../src/store/migrate.ts';
import { withPostgres } from '../support/databases.ts';

/** Triggers on the tables that a closing writes. */
const MIGRATION = '0007_past_changes';

/** The migrations before that one, in a folder of their own. */
async function migrationsBefore(folder: string): Promise<typeof MIGRATIONS> {
  await cp(MIGRATIONS.migrationsFolder, folder, { recursive: true });
  const file = join(folder, 'meta/_journal.json');
  const journal = JSON.parse(await readFile(file, 'utf8')) as { entries: { tag: string }[] };
  journal.entries = journal.entries.slice(
    0,
    journal.entries.findIndex(({ tag }) => tag === MIGRATION),
  );
  await writeFile(file, JSON.stringify(journal));
  return { ...MIGRATIONS, migrationsFolder: folder };
}

it('both come through: the one waits for the other', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'loadline-upgrade-'));
  const own = await withPostgres('nothing');
  const [ofOld, ofNew, onlooker] = [0, 1, 2].map(() =>
    postgres(own.databaseUrl, { max: 1, onnotice: () => undefined }),
  ) as [postgres.Sql, postgres.Sql, postgres.Sql];
  try {
    await migrate(drizzle(ofNew), await migrationsBefore(folder));
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
