/** The image that new data folders begin with: when it is used, and that nothing depends on it. */
import { execFile } from 'node:child_process';
import { appendFile, cp, mkdir, mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { sql } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import packageJson from '../../../package.json' with { type: 'json' };
import { imageFile, keptImage, unpackImage } from '../../../src/store/embedded/data-folder-image.ts';
import { makeImage } from '../../../src/store/embedded/make-data-folder-image.ts';
import { MIGRATIONS } from '../../../src/store/migrate.ts';
import { openDatabase } from '../../../src/store/open-database.ts';

vi.mock(import('../../../src/store/embedded/data-folder-image.ts'), async (original) => {
  const real = await original();
  return { ...real, imageFile: vi.fn(real.imageFile) };
});

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'loadline-image-'));
  await makeImage();
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** The identifier of the database in a folder, another one in each that PGlite makes itself. */
async function identifierIn(dataFolder: string): Promise<unknown> {
  const database = await openDatabase({ dataFolder });
  const { rows } = (await database.session.execute(
    sql`select system_identifier::text as id from pg_control_system()`,
  )) as unknown as { rows: { id: string }[] };
  await database.close();
  return rows[0]?.id;
}

/** What the image's first part would leave of it, as when a disk is full. */
async function cutShort(): Promise<string> {
  const file = join(folder, 'cut-short.tar');
  const image = await readFile(await imageFile());
  await writeFile(file, image.subarray(0, image.length / 2));
  return file;
}

describe('a new data folder', () => {
  it('begins with the image, and takes nothing from a process that was stopped meanwhile', async () => {
    const [first, second] = [join(folder, 'first'), join(folder, 'second')];
    await mkdir(join(second, 'database.unfinished'), { recursive: true });
    await writeFile(join(second, 'database.unfinished', 'PG_VERSION'), 'cut short');
    expect(await identifierIn(first)).toBe(await identifierIn(second));
    expect((await readdir(second)).sort()).toEqual(['database', 'lock']);
    expect((await readdir(join(second, 'database'))).sort()).toEqual(
      (await readdir(join(first, 'database'))).sort(),
    );
  });

  it('is made without the image where that is not whole', async () => {
    vi.mocked(imageFile).mockResolvedValueOnce(await cutShort());
    const dataFolder = join(folder, 'again');
    expect(await identifierIn(dataFolder)).not.toBe(await identifierIn(join(folder, 'third')));
    expect((await readdir(dataFolder)).sort()).toEqual(['database', 'lock']);
  });

  it('keeps its database where it has one', async () => {
    const dataFolder = join(folder, 'kept');
    await mkdir(join(dataFolder, 'database'), { recursive: true });
    await writeFile(join(dataFolder, 'database', 'PG_VERSION'), '9.6');
    await expect(openDatabase({ dataFolder })).rejects.toMatchObject({ code: 'data-folder-damaged' });
    expect(await readdir(join(dataFolder, 'database'))).toEqual(['PG_VERSION']);
  });
});

describe('unpackImage', () => {
  it('leaves nothing of an image that is not whole', async () => {
    const target = join(folder, 'nothing');
    const file = await cutShort();
    await expect(unpackImage(file, target)).rejects.toThrow();
    // Not even when it ends as a whole one does.
    await appendFile(file, Buffer.alloc(1_024));
    await expect(unpackImage(file, target)).rejects.toThrow();
    expect((await readdir(folder)).filter((name) => name.startsWith('nothing'))).toEqual([]);
  });

  it('makes each file as long as it was, with what was in it and for its owner only', async () => {
    const target = join(folder, 'whole');
    const file = await imageFile();
    await unpackImage(file, target);
    const { stdout } = await promisify(execFile)('tar', ['--list', '--verbose', '--file', file], {
      maxBuffer: 10_000_000,
    });
    const listed = stdout.split('\n').filter((line) => line.startsWith('-'));
    expect(listed.length).toBeGreaterThan(1_000);
    for (const line of listed) {
      const [, , size, , , name] = line.split(/\s+/) as [string, string, string, string, string, string];
      expect((await stat(join(target, name))).size).toBe(Number(size));
    }
    expect(await readFile(join(target, 'PG_VERSION'), 'utf8')).toBe('18\n');
    expect((await stat(join(target, 'global/pg_control'))).mode & 0o077).toBe(0);
  });
});

describe('the image', () => {
  it('is another one when a migration comes, goes or changes', async () => {
    const migrationsFolder = join(folder, 'migrations');
    await cp(MIGRATIONS.migrationsFolder, migrationsFolder, { recursive: true });
    const names = [await imageFile(folder, { ...MIGRATIONS, migrationsFolder })];
    expect(names[0]).toBe(await imageFile(folder));
    const added = join(migrationsFolder, '9999_new.sql');
    for (const change of ['select 1;', 'select 2;']) {
      await writeFile(added, change);
      names.push(await imageFile(folder, { ...MIGRATIONS, migrationsFolder }));
    }
    await rm(join(migrationsFolder, '0001_tables.sql'));
    names.push(await imageFile(folder, { ...MIGRATIONS, migrationsFolder }));
    expect(new Set(names).size).toBe(4);
  });

  it('takes the place of those of other versions, which are not used', async () => {
    const images = join(folder, 'images');
    await mkdir(images);
    await writeFile(join(images, 'new-database-0123456789abcdef.tar'), 'of another version');
    expect(await keptImage(images)).toBeUndefined();
    const made = await makeImage(images);
    expect((await readdir(images)).map((name) => join(images, name))).toEqual([await imageFile(images)]);
    expect((await keptImage(images))?.size).toBe(made.size);
  });

  it('is one, also when several processes make it at once: who has begun with it goes on with it', async () => {
    const images = join(folder, 'at-once');
    const made = await Promise.all([makeImage(images), makeImage(images)]);
    const [first, second] = await Promise.all(
      made.map(async (image) => Buffer.from(await image.arrayBuffer())),
    );
    expect(first?.equals(second as Buffer)).toBe(true);
    expect(first?.equals(await readFile(await imageFile(images)))).toBe(true);
    expect(await readdir(images)).toHaveLength(1);
  });

  it('is not made where nothing can be written, which fails no installation', async () => {
    const file = join(folder, 'no-folder');
    await writeFile(file, '');
    await expect(makeImage(join(file, 'images'))).rejects.toMatchObject({ code: 'ENOTDIR' });
    expect(packageJson.scripts.prepare).toMatch(/ \|\| exit 0$/);
  });
});
