import { cp, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { MIGRATIONS } from '../../src/store/migrate.ts';

/** The migrations that came before one of them, copied into a folder of their own. @param tag e.g. `0007_past_changes` */
export async function migrationsBefore(tag: string, folder: string): Promise<typeof MIGRATIONS> {
  await cp(MIGRATIONS.migrationsFolder, folder, { recursive: true });
  const file = join(folder, 'meta/_journal.json');
  const journal = JSON.parse(await readFile(file, 'utf8')) as { entries: { tag: string }[] };
  journal.entries = journal.entries.slice(
    0,
    journal.entries.findIndex((entry) => entry.tag === tag),
  );
  await writeFile(file, JSON.stringify(journal));
  return { ...MIGRATIONS, migrationsFolder: folder };
}
