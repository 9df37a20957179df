/**
 * The image of a new embedded database, made once by the installation and kept beside the packages: a tar, as PGlite dumps
 * and loads it. To make a database takes PGlite 5 seconds, to unpack the image 0.5; nothing else is gained, and where there
 * is no image everything works. It holds no secret and nobody's data. It is used for as long as PGlite, the queue and the
 * migrations are what they were.
 */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, readdir, readFile, rename, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { unpackTar } from 'modern-tar/fs';
import { MIGRATIONS } from '../migrate.ts';

export const IMAGE_FOLDER = fileURLToPath(new URL('../../../node_modules/.cache/loadline', import.meta.url));

/** What a new database is made from, besides the migrations. */
const PACKAGES = ['@electric-sql/pglite', 'pg-boss'];

/** As a Postgres server wants its folder. */
const OWNER_ONLY = { fmode: 0o600, dmode: 0o700 };

/** @returns the kept image; undefined when none was made of a database as it would be made now */
export async function keptImage(folder = IMAGE_FOLDER): Promise<Blob | undefined> {
  try {
    return new Blob([await readFile(await imageFile(folder))]);
  } catch {
    return undefined;
  }
}

/**
 * Makes a folder from an image. The folder appears whole or not at all, even when the process is stopped.
 *
 * @param folder must not be there, but its parent must
 * @throws when there is no image or not all of it, or the folder can't be made; nothing is left then
 */
export async function unpackImage(file: string, folder: string): Promise<void> {
  const unfinished = `${folder}.unfinished`;
  try {
    // Of a process that was stopped here.
    await rm(unfinished, { recursive: true, force: true });
    await mkdir(unfinished, { mode: OWNER_ONLY.dmode });
    await pipeline(createReadStream(file), unpackTar(unfinished, { ...OWNER_ONLY, strict: true }));
    await rename(unfinished, folder);
  } catch (error) {
    await rm(unfinished, { recursive: true, force: true });
    throw error;
  }
}

/** Where the image is kept, if it is: another file for everything that would make another database. */
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
