/**
 * From the schema of the first release to today's, on both databases: every row is there afterwards, processes
 * of the first release can go on working meanwhile, and can be gone back to.
 */
import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import { drizzle as drizzleOverPglite } from 'drizzle-orm/pglite';
import { migrate as migratePglite } from 'drizzle-orm/pglite/migrator';
import { drizzle as drizzleOverPostgres } from 'drizzle-orm/postgres-js';
import { migrate as migratePostgres } from 'drizzle-orm/postgres-js/migrator';
import postgres from 'postgres';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { MIGRATIONS } from '../../src/store/migrate.ts';
import { openDatabase } from '../../src/store/open-database.ts';
import {
  FIRST_RELEASE_MIGRATIONS,
  firstReleaseChanges,
  firstReleaseRows,
} from '../store/first-release-rows.ts';
import { LANDED_MIGRATIONS } from '../store/landed-migrations.ts';
import { CODED_SUMMARY, READ_SUMMARY } from '../store/spoken-summary.ts';
import { withPostgres } from '../support/databases.ts';
import { contentOf, FIRST_TABLES } from '../support/filled-database.ts';

/** A database as an operator of the first release has it, and how its program reaches it. */
interface OldDatabase {
  migrate(): Promise<void>;
  run(statements: readonly string[]): Promise<void>;
  rows(table: string): Promise<Record<string, unknown>[]>;
  /** Lets go of it, so that today's program can open it. */
  leave(): Promise<void>;
  openToday(): Promise<Database>;
  remove(): Promise<void>;
}

let folder: string;
let oldMigrations: typeof MIGRATIONS;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'loadline-upgrade-'));
  const migrationsFolder = join(folder, 'drizzle');
  await cp(MIGRATIONS.migrationsFolder, migrationsFolder, { recursive: true });
  const journalFile = join(migrationsFolder, 'meta/_journal.json');
  const journal = JSON.parse(await readFile(journalFile, 'utf8')) as { entries: unknown[] };
  journal.entries = journal.entries.slice(0, FIRST_RELEASE_MIGRATIONS);
  await writeFile(journalFile, JSON.stringify(journal));
  oldMigrations = { ...MIGRATIONS, migrationsFolder };
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const inOrder = (table: string): string =>
  `select to_jsonb(t) as row from loadline.${table} as t order by to_jsonb(t)::text`;

async function oldPostgres(): Promise<OldDatabase> {
  const own = await withPostgres('nothing');
  let client = postgres(own.databaseUrl, { max: 1, onnotice: () => undefined });
  return {
    migrate: () => migratePostgres(drizzleOverPostgres(client), oldMigrations),
    async run(statements) {
      for (const statement of statements) await client.unsafe(statement);
    },
    rows: async (table) => (await client.unsafe(inOrder(table))).map(({ row }) => row),
    // On a server both are there at once.
    leave: async () => undefined,
    openToday: () => own.open(),
    async remove() {
      await client.end();
      client = undefined as never;
      await own.drop();
    },
  };
}

async function oldDataFolder(): Promise<OldDatabase> {
  const dataFolder = join(folder, 'data');
  let open: PGlite | undefined;
  const client = async (): Promise<PGlite> => {
    open ??= await PGlite.create(join(dataFolder, 'database'));
    return open;
  };
  const leave = async (): Promise<void> => {
    await open?.close();
    open = undefined;
  };
  await mkdir(dataFolder);
  return {
    migrate: async () => migratePglite(drizzleOverPglite(await client()), oldMigrations),
    async run(statements) {
      for (const statement of statements) await (await client()).exec(statement);
    },
    async rows(table) {
      const { rows } = await (await client()).query<{ row: Record<string, unknown> }>(inOrder(table));
      return rows.map(({ row }) => row);
    },
    leave,
    openToday: () => openDatabase({ dataFolder }),
    remove: leave,
  };
}

describe.each([
  ['a Postgres server', oldPostgres],
  ['a data folder', oldDataFolder],
] as const)('an upgrade of %s', (_kind, prepare) => {
  let old: OldDatabase;
  const before: Record<string, Record<string, unknown>[]> = {};

  beforeAll(async () => {
    old = await prepare();
    await old.migrate();
    await old.run(firstReleaseRows('a'));
    for (const table of FIRST_TABLES) before[table] = await old.rows(table);
    await old.leave();
  });
  afterAll(() => old.remove());

  it('begins with something in every table of the first release', () => {
    for (const table of FIRST_TABLES) expect([table, before[table]?.length]).not.toEqual([table, 0]);
  });

  it('keeps every value of every row, and the use cases read them', async () => {
    const database = await old.openToday();
    const after = await contentOf(database);
    for (const table of FIRST_TABLES) {
      const columns = Object.keys(before[table]?.[0] ?? {});
      const kept = (after[table] ?? []).map((row) =>
        Object.fromEntries(columns.map((column) => [column, row[column]])),
      );
      const rows = before[table]?.map((row) => ({
        ...row,
        // Sentences have become codes.
        ...('summary' in row ? { summary: CODED_SUMMARY } : {}),
        // Marks that nobody had chosen are off.
        ...(table === 'teams'
          ? { velocity_growth_first_mark: null, velocity_growth_long_range_mark: null }
          : {}),
      }));
      expect([table, kept]).toEqual([table, expect.arrayContaining(rows as object[])]);
      expect(kept).toHaveLength(before[table]?.length as number);
    }
    expect(after.migrations).toHaveLength(Object.keys(LANDED_MIGRATIONS).length);
    await database.store.read(async (read) => {
      const team = await read.teamById('team-a');
      expect(team).toMatchObject({ name: 'Harbour', baselineSprintId: 'closed-a' });
      expect(await read.openSprintsOf('team-a')).toEqual([expect.objectContaining({ id: 'open-a' })]);
      const { cards, facts } = await read.recordsOf('open-a');
      expect(cards.map(({ key, estimatePoints }) => [key, estimatePoints])).toEqual([
        ['LP-1', 2.5],
        ['LP-2', 5],
      ]);
      expect(facts).toHaveLength(3);
      expect((await read.promptOf('open-a', 'U-ana', '2026-11-03'))?.state).toBe('answered');
      expect((await read.postById('verdict-a'))?.state).toBe('pending');
      expect((await read.latestResult('closed-a'))?.summary).toEqual(READ_SUMMARY);
    });
    await database.close();
  });

  it('is survived by the first release, which goes on writing and can start again', async () => {
    await old.run(firstReleaseRows('bb'));
    await old.run(firstReleaseChanges('bb'));
    await old.run(firstReleaseChanges('a'));
    expect(await old.rows('answers')).toHaveLength(4);
    // Its start finds more migrations than it knows, and ignores them.
    await old.migrate();
    expect(await old.rows('migrations')).toHaveLength(Object.keys(LANDED_MIGRATIONS).length);
    await old.leave();
    const database = await old.openToday();
    await database.store.read(async (read) => {
      expect((await read.teamById('team-bb'))?.name).toBe('Quay');
      expect((await read.promptOf('open-bb', 'U-ben', '2026-11-03'))?.state).toBe('away');
      expect((await read.latestResult('closed-bb'))?.summary).toEqual(READ_SUMMARY);
    });
    await database.close();
  });
});
