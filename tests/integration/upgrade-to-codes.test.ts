/** What the version before kept of its sprints, with sentences, from its schema to today's, on both databases. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import { drizzle as drizzleOverPglite } from 'drizzle-orm/pglite';
import { migrate as migratePglite } from 'drizzle-orm/pglite/migrator';
import { drizzle as drizzleOverPostgres } from 'drizzle-orm/postgres-js';
import { migrate as migratePostgres } from 'drizzle-orm/postgres-js/migrator';
import postgres from 'postgres';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { MIGRATIONS } from '../../src/store/migrate.ts';
import { firstReleaseRows } from '../store/first-release-rows.ts';
import { CODED_SUMMARY, SPOKEN_REASONS } from '../store/spoken-summary.ts';
import { withPostgres } from '../support/databases.ts';
import { migrationsBefore } from '../support/migrations-before.ts';

interface OpenDatabase {
  migrate(migrations: typeof MIGRATIONS): Promise<void>;
  query(sql: string): Promise<Record<string, unknown>[]>;
  remove(): Promise<void>;
}

async function onPostgres(): Promise<OpenDatabase> {
  const own = await withPostgres('nothing');
  const client = postgres(own.databaseUrl, { max: 1, onnotice: () => undefined });
  return {
    migrate: (migrations) => migratePostgres(drizzleOverPostgres(client), migrations),
    query: async (sql) => [...(await client.unsafe(sql))],
    async remove() {
      await client.end();
      await own.drop();
    },
  };
}

async function embedded(): Promise<OpenDatabase> {
  const client = await PGlite.create();
  return {
    migrate: (migrations) => migratePglite(drizzleOverPglite(client), migrations),
    query: async (sql) => (await client.query<Record<string, unknown>>(sql)).rows,
    remove: () => client.close(),
  };
}

const RATIOS = { keptShare: 0.8, planShare: 20 / 24 };

/** A row for each reason, in their order. */
const PAST_ROWS = SPOKEN_REASONS.flatMap(([kept], i) => {
  const id = `past-${i}`;
  const ratios = JSON.stringify({ ...RATIOS, onScaleShare: { undefined: kept } });
  return [
    `insert into loadline.sprints (id, team_id, name, goal, starts_on, ends_on, closing_time, closes_at, state, closed_at)
      values ('${id}', 'team-a', '${id}', '', date '2020-01-06' + ${14 * i}, date '2020-01-17' + ${14 * i}, '17:00',
        '2020-01-17T17:00Z', 'closed', '2020-01-17T17:00Z')`,
    `insert into loadline.past_sprints (sprint_id, team_id, workspace_id, ends_on, working_days, commitment_points, ratios,
        trace, cards, recorded_at)
      values ('${id}', 'team-a', 'W1', date '2020-01-17' + ${14 * i}, 10, 20, '${ratios}', '[]', '[]',
        '2020-01-17T17:00Z')`,
  ];
});

describe.each([
  ['a Postgres server', onPostgres],
  ['the embedded database', embedded],
] as const)('on %s', (_kind, open) => {
  let folder: string;
  let database: OpenDatabase;

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'loadline-codes-'));
    database = await open();
    await database.migrate(await migrationsBefore('0008_codes', folder));
    for (const statement of [...firstReleaseRows('a'), ...PAST_ROWS]) await database.query(statement);
    await database.migrate(MIGRATIONS);
  });
  afterAll(async () => {
    await database.remove();
    await rm(folder, { recursive: true, force: true });
  });

  it('every reason becomes its code, and numbers stay', async () => {
    const rows = await database.query(
      `select ratios from loadline.past_sprints where sprint_id like 'past-%' order by ends_on`,
    );
    expect(rows.map(({ ratios }) => ratios)).toEqual(
      SPOKEN_REASONS.map(([, code]) => ({ ...RATIOS, onScaleShare: { undefined: code } })),
    );
  });

  it('every note becomes its code with the numbers, under a key that the version before does not read', async () => {
    const [row] = await database.query('select summary from loadline.sprint_results');
    expect(row?.summary).toEqual(CODED_SUMMARY);
  });

  it('what is coded stays as it is', async () => {
    const again = await database.query(
      'select summary = loadline.coded_summary(summary) as same from loadline.sprint_results',
    );
    expect(again).toEqual([{ same: true }]);
    expect(
      await database.query(
        'select bool_and(ratios = loadline.coded_ratios(ratios)) as same from loadline.past_sprints',
      ),
    ).toEqual([{ same: true }]);
  });

  it('results are append-only again', async () => {
    await expect(database.query(`update loadline.sprint_results set summary = '{}'`)).rejects.toThrow(
      /sprint_results/,
    );
  });
});
