/** What becomes of a process whose connections to Postgres are lost in the middle of transactions, with and without the patch. */
import { execFile } from 'node:child_process';
import { cp, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type OwnPostgres, withPostgres } from '../support/databases.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const LOSE_CONNECTIONS = fileURLToPath(new URL('./lose-connections.ts', import.meta.url));
const run = promisify(execFile);

let own: OwnPostgres;
let folder: string;
beforeAll(async () => {
  own = await withPostgres();
  folder = await mkdtemp(join(tmpdir(), 'loadline-driver-'));
});
afterAll(async () => {
  await own.drop();
  await rm(folder, { recursive: true, force: true });
});

it('a process whose connections are lost in the middle of transactions refuses those and lives on', async () => {
  const { stdout } = await run(process.execPath, [LOSE_CONNECTIONS, own.databaseUrl]);
  expect(stdout).toContain('refused 20 of 20, and still here');
});

/** The driver as it is published: a copy of the installed one, with the patch taken back. */
async function publishedDriver(): Promise<string> {
  const copy = join(folder, 'node_modules/postgres');
  await cp(join(ROOT, 'node_modules/postgres'), copy, { recursive: true });
  await cp(join(ROOT, 'patches'), join(folder, 'patches'), { recursive: true });
  await writeFile(join(folder, 'package.json'), '{}');
  await run(join(ROOT, 'node_modules/.bin/patch-package'), ['--reverse', '--error-on-fail'], { cwd: folder });
  return pathToFileURL(join(copy, 'src/index.js')).href;
}

it('the driver as it is published ends the process; once it does not, the patch of it can go', async () => {
  const script = `import postgres from ${JSON.stringify(await publishedDriver())};
    const sql = postgres(${JSON.stringify(own.databaseUrl)}, { max: 1 });
    await sql.begin((tx) => tx\`select pg_terminate_backend(pg_backend_pid())\`).catch(() => undefined);
    await sql.end();`;
  const ended = run(process.execPath, ['--input-type=module', '--eval', script]);
  await expect(ended).rejects.toMatchObject({
    stderr: expect.stringContaining("Cannot read properties of null (reading 'write')"),
  });
});
