import { execFile } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { expect, it } from 'vitest';
import { mendSource } from '../../src/store/postgres/mended-driver.ts';
import { withPostgres } from '../support/databases.ts';

const LOSE_CONNECTIONS = fileURLToPath(new URL('./lose-connections.ts', import.meta.url));

it('a process whose connections are lost in the middle of transactions refuses those and lives on', async () => {
  const own = await withPostgres();
  const { stdout } = await promisify(execFile)(process.execPath, [LOSE_CONNECTIONS, own.databaseUrl]);
  expect(stdout).toContain('refused 20 of 20, and still here');
  await own.drop();
});

it('the driver that is installed has the fault that is mended; once it has not, the mending can go', async () => {
  const file = fileURLToPath(import.meta.resolve('postgres')).replace('index.js', 'connection.js');
  const source = await readFile(file, 'utf8');
  const mended = mendSource(source);
  expect(source).toContain('const x = socket.write(chunk, fn)');
  expect(mended).not.toContain('const x = socket.write(chunk, fn)');
  expect(mended.match(/chunk = nextWriteTimer = null/g)).toHaveLength(3);
});
