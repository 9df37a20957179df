/** Makes the image that new databases start from, once, and keeps it (`data-folder-image.ts`). */
import { randomUUID } from 'node:crypto';
import { link, mkdir, mkdtemp, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import { openDatabase } from '../open-database.ts';
import { IMAGE_FOLDER, imageFile, keptImage } from './data-folder-image.ts';

/**
 * @returns the image that is kept: the one that was there, or the first of those that several processes make at once
 * @throws when the folder can't be written
 */
export async function makeImage(folder = IMAGE_FOLDER): Promise<Blob> {
  const kept = await keptImage(folder);
  if (kept) return kept;
  await mkdir(folder, { recursive: true });
  const image = await imageOfNewDatabase();
  const file = await imageFile(folder);
  // Kept when it is whole: several processes may do this at once, and any may be stopped.
  const own = `${file}.${randomUUID()}`;
  await writeFile(own, Buffer.from(await image.arrayBuffer()), { flush: true });
  await keepFirst(own, file);
  for (const other of await readdir(folder)) {
    if (/^new-database-.*\.tar$/.test(other) && other !== basename(file))
      await rm(join(folder, other), { force: true });
  }
  return (await keptImage(folder)) ?? image;
}

/** Nobody who has begun with an image finds another one in its place. */
async function keepFirst(own: string, file: string): Promise<void> {
  try {
    await link(own, file);
    await rm(own);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return rm(own);
    // Some file systems know no links.
    await rename(own, file);
  }
}

/** Of one that was shut down, so that its first start has nothing to recover. */
async function imageOfNewDatabase(): Promise<Blob> {
  const dataFolder = await mkdtemp(join(tmpdir(), 'loadline-image-'));
  try {
    await (await openDatabase({ dataFolder })).close();
    const shutDown = await PGlite.create({ dataDir: join(dataFolder, 'database'), noInitDb: true });
    const image = await shutDown.dumpDataDir('none');
    await shutDown.close();
    return image;
  } finally {
    await rm(dataFolder, { recursive: true, force: true });
  }
}
