/**
 * What docs/operating.md says of backups, done: a data folder is copied, dumped and restored, and moved to a
 * Postgres server. All that was recorded is there again, and the work goes on.
 */
import { execFile } from 'node:child_process';
import { cp, mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import postgres from 'postgres';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { openDatabase } from '../../src/store/open-database.ts';
import { openQueue } from '../../src/store/queue/delivery-queue.ts';
import { aPost } from '../store/store-examples.ts';
import { withPostgres } from '../support/databases.ts';
import { contentOf, FIRST_TABLES, fillDatabase } from '../support/filled-database.ts';

const MAIN = new URL('../../src/main.js', import.meta.url).pathname;

let folder: string;
let source: string;
let dump: string;
let before: Awaited<ReturnType<typeof contentOf>>;
let sprintId: string;

function run(word: string, file: string, dataFolder: string): Promise<{ code: number; output: string }> {
  const env = { PATH: process.env.PATH ?? '', LOADLINE_DATA_FOLDER: dataFolder };
  return new Promise((resolve) => {
    execFile(process.execPath, [MAIN, word, file], { env }, (error, stdout, stderr) => {
      resolve({ code: error ? Number(error.code) : 0, output: stdout + stderr });
    });
  });
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'loadline-backup-'));
  source = join(folder, 'source');
  dump = join(folder, 'dump.sql');
  const database = await openDatabase({ dataFolder: source });
  ({ sprintId } = await fillDatabase(database));
  before = await contentOf(database);
  await database.close();
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** All is there, and new posts come after the old ones in the queue. */
async function expectWhole(database: Database): Promise<void> {
  expect(await contentOf(database)).toEqual(before);
  await database.store.transaction((tx) => tx.write.posts.add([aPost(sprintId)]));
  const queue = await openQueue(database);
  const delivered: string[] = [];
  await queue.drain(async (postId) => {
    delivered.push(postId);
    return { done: true };
  });
  await queue.stop({ graceful: false });
  expect(delivered).toHaveLength(3);
  expect(before.posts?.map(({ id }) => id)).toEqual(expect.arrayContaining(delivered.slice(0, 2)));
}

describe('a backup', () => {
  it('is tried on a database with something in every table', () => {
    for (const table of FIRST_TABLES) expect([table, before[table]?.length]).not.toEqual([table, 0]);
    expect(before.queue).toHaveLength(2);
  });

  it('by copying the folder, while the bot is stopped, is whole', async () => {
    const copy = join(folder, 'copy');
    await cp(source, copy, { recursive: true });
    const database = await openDatabase({ dataFolder: copy });
    await expectWhole(database);
    await database.close();
  });

  it('by npm run dump is one file that only its owner can read, and npm run restore makes it whole again', async () => {
    expect(await run('dump', dump, source)).toEqual({
      code: 0,
      output: expect.stringContaining('Written to'),
    });
    expect((await stat(dump)).mode & 0o777).toBe(0o600);
    const restored = join(folder, 'restored');
    expect((await run('restore', dump, restored)).code).toBe(0);
    const database = await openDatabase({ dataFolder: restored });
    await expectWhole(database);
    await database.close();
  });

  it('moves to a Postgres server, where the bot goes on with it', async () => {
    const own = await withPostgres('nothing');
    const client = postgres(own.databaseUrl, { max: 1, onnotice: () => undefined });
    // As psql does it: the whole file, in one transaction.
    await client.unsafe(`begin; ${await readFile(dump, 'utf8')} commit;`);
    await client.end();
    const database = await own.open();
    await expectWhole(database);
    await database.close();
    await own.drop();
  });

  it('does not run beside the bot, and says so', async () => {
    const database = await openDatabase({ dataFolder: source });
    const file = join(folder, 'beside.sql');
    const refused = await run('dump', file, source);
    expect(refused).toEqual({
      code: 1,
      output: expect.stringContaining('Another process has the data folder'),
    });
    expect(await readdir(folder)).not.toContain('beside.sql');
    await database.close();
  });

  it('overwrites nothing: neither a file, nor a database', async () => {
    expect(await run('dump', dump, source)).toEqual({ code: 1, output: expect.stringContaining('EEXIST') });
    const refused = await run('restore', dump, source);
    expect(refused).toEqual({ code: 1, output: expect.stringContaining('already') });
  });

  it('from a file that is cut short restores nothing, and says so', async () => {
    const short = join(folder, 'short.sql');
    const text = await readFile(dump, 'utf8');
    // In the middle of a statement.
    await writeFile(short, text.slice(0, text.indexOf('INSERT INTO loadline.cards') + 40));
    const { code, output } = await run('restore', short, join(folder, 'never'));
    expect([code, output]).toEqual([1, expect.stringContaining('not a dump, or not a complete one')]);
  });

  it('explains itself when it is asked wrongly', async () => {
    const { code, output } = await run('dump', '', join(folder, 'absent'));
    expect([code, output]).toEqual([1, expect.stringContaining('can’t be used')]);
    const absent = await run('dump', join(folder, 'x.sql'), join(folder, 'absent'));
    expect(absent.output).toContain('There is no database in the data folder');
    expect((await run('throw', 'x', source)).code).toBe(2);
  });
});
