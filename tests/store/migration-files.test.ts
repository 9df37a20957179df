import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { generateDrizzleJson, generateMigration } from 'drizzle-kit/api';
import { expect, it } from 'vitest';
import { MIGRATIONS } from '../../src/store/migrate.ts';
import * as schema from '../../src/store/schema.ts';
import { LANDED_MIGRATIONS } from './landed-migrations.ts';

const FOLDER = MIGRATIONS.migrationsFolder;

it('landed migrations are unchanged, and none is missing from the list', async () => {
  const files = (await readdir(FOLDER)).filter((file) => file.endsWith('.sql')).sort();
  const hashes = await Promise.all(
    files.map(async (file) => [
      file,
      createHash('sha256')
        .update(await readFile(join(FOLDER, file)))
        .digest('hex'),
    ]),
  );
  expect(Object.fromEntries(hashes)).toEqual(LANDED_MIGRATIONS);
});

it('the migrations make exactly the tables of the schema', async () => {
  const snapshots = (await readdir(join(FOLDER, 'meta')))
    .filter((file) => file.endsWith('_snapshot.json'))
    .sort();
  const latest = JSON.parse(await readFile(join(FOLDER, 'meta', snapshots.at(-1) as string), 'utf8'));
  const wanted = generateDrizzleJson(schema, latest.id, ['loadline']);
  // Run `npx drizzle-kit generate` when this lists statements.
  expect(await generateMigration(latest, wanted)).toEqual([]);
});
