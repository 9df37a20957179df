import { sql } from 'drizzle-orm';
import { afterEach, expect, it } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { LANDED_MIGRATIONS } from '../store/landed-migrations.ts';
import { savedSprint } from '../store/store-examples.ts';
import type { OwnPostgres } from '../support/databases.ts';
import { withPostgres } from '../support/databases.ts';

const open: Database[] = [];
let own: OwnPostgres | undefined;

async function opened(): Promise<Database> {
  const database = await (own as OwnPostgres).open();
  open.push(database);
  return database;
}

async function migrationsRun(database: Database): Promise<number> {
  const [row] = await database.session
    .select({ count: sql<number>`count(*)::integer` })
    .from(sql`loadline.migrations`);
  return row?.count ?? 0;
}

afterEach(async () => {
  await Promise.all(open.splice(0).map((database) => database.close()));
  await own?.drop();
});

const ALL = Object.keys(LANDED_MIGRATIONS).length;

it('a second start finds the database up to date and keeps what is in it', async () => {
  own = await withPostgres();
  const first = await opened();
  const { sprint } = await savedSprint(first);
  await first.close();
  const second = await opened();
  expect(await migrationsRun(second)).toBe(ALL);
  expect(await second.store.read((read) => read.sprintById(sprint.id))).toEqual(sprint);
});

it('eight processes that start at once on an empty database all start, and migrate it once', async () => {
  own = await withPostgres('nothing');
  const databases = await Promise.all(Array.from({ length: 8 }, opened));
  expect(await migrationsRun(databases[0] as Database)).toBe(ALL);
  await Promise.all(databases.map((database) => savedSprint(database)));
});
