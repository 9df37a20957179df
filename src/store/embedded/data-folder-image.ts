/**
 * The image of a database as it is when new: PGlite takes seconds to make one, and hardly any time to go on with one. It is
 * kept beside the packages for as long as PGlite, the queue and the migrations are what they were. It holds no secret and
 * nobody's data; that data folders made from it begin with the same identifier matters only where they replicate, which
 * PGlite can't. Must not be needed: where there is none, all is made anew.
 */
import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { MIGRATIONS } from '../migrate.ts';

export const IMAGE_FOLDER = fileURLToPath(new URL('../../../node_modules/.cache/loadline', import.meta.url));

/** What a new database is made from, besides the migrations. */
const PACKAGES = ['@electric-sql/pglite', 'pg-boss'];

/** @returns the kept image, a tar; undefined when none was made of a database as it would be made now */
export async function keptImage(folder = IMAGE_FOLDER): Promise<Blob | undefined> {
  try {
    return new Blob([await readFile(await imageFile(folder))]);
  } catch {
    return undefined;
  }
}

/** Where the image is kept, if it is: another file for whatever would make another database. */
export async function imageFile(folder = IMAGE_FOLDER, { migrationsFolder } = MIGRATIONS): Promise<string> {
  const hash = createHash('sha256');
  for (const name of PACKAGES) hash.update(`${name} ${await versionOf(name)}\n`);
  for (const name of (await readdir(migrationsFolder)).sort()) {
    if (name.endsWith('.sql')) hash.update(`${name}\n`).update(await readFile(join(migrationsFolder, name)));
  }
  return join(folder, `new-database-${hash.digest('hex').slice(0, 16)}.tar`);
}

async function versionOf(name: string): Promise<string> {
  const { resolve } = createRequire(import.meta.url);
  const description = new URL('../package.json', pathToFileURL(resolve(name)));
  return (JSON.parse(await readFile(description, 'utf8')) as { version: string }).version;
}
