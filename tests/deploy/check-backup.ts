/**
 * The backup of a Postgres server as docs/operating.md has it, with the Postgres that is installed on this
 * machine: filled, dumped, restored into another database, compared. Starts a server of its own, and does all as the user
 * that the compose file's database makes, who is no superuser.
 */
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { chmodSync, chownSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import postgres from 'postgres';
import { openDatabase } from '../../src/store/open-database.ts';
import { contentOf, fillDatabase } from '../support/filled-database.ts';
import { ownerScript } from './owner-sql.ts';

const DEBIAN = '/usr/lib/postgresql';

/** The folder of a whole installation: server and tools of one version. Undefined: there is none. */
function installation(): string | undefined {
  const told = spawnSync('pg_config', ['--bindir'], { encoding: 'utf8' });
  const listed = spawnSync('ls', [DEBIAN], { encoding: 'utf8' }).stdout.trim().split('\n').toReversed();
  const folders = [
    ...(told.status === 0 ? [told.stdout.trim()] : []),
    ...listed.map((v) => join(DEBIAN, v, 'bin')),
  ];
  return folders.find((folder) => {
    try {
      const programs = readdirSync(folder);
      return ['initdb', 'postgres', 'pg_dump', 'pg_restore', 'psql'].every((name) => programs.includes(name));
    } catch {
      return false;
    }
  });
}

/** Postgres refuses to run as root. */
function identity(): { uid?: number; gid?: number } {
  if (process.getuid?.() !== 0) return {};
  const id = (flag: string) => Number(execFileSync('id', [flag, 'nobody'], { encoding: 'utf8' }));
  return { uid: id('-u'), gid: id('-g') };
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as { port: number };
  await new Promise((resolve) => server.close(resolve));
  return port;
}

export async function checkBackup(): Promise<['passed' | 'could not run', string]> {
  const bin = installation();
  if (bin === undefined) return ['could not run', 'no Postgres is installed on this machine'];
  const run = (program: string, ...args: string[]): string =>
    execFileSync(join(bin, program), args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
  const folder = mkdtempSync(join(tmpdir(), 'loadline-check-backup-'));
  const who = identity();
  if (who.uid !== undefined && who.gid !== undefined) chownSync(folder, who.uid, who.gid);
  chmodSync(folder, 0o700);
  const data = join(folder, 'data');
  // The locale and the trust are for a server that lives for seconds and listens on this machine only.
  const initialise = ['-D', data, '-U', 'postgres', '-A', 'trust', '-E', 'UTF8', '--locale=C', '--no-sync'];
  execFileSync(join(bin, 'initdb'), initialise, { ...who, cwd: folder, stdio: 'ignore' });
  const port = await freePort();
  const settings = ['-c', 'listen_addresses=127.0.0.1', '-c', 'unix_socket_directories='];
  const server = spawn(join(bin, 'postgres'), ['-D', data, '-p', String(port), ...settings], {
    ...who,
    cwd: folder,
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  try {
    await new Promise<void>((resolve, reject) => {
      server.once('exit', (code) => reject(new Error(`the server ended with code ${code}`)));
      server.stderr.setEncoding('utf8').on('data', (text: string) => {
        if (text.includes('ready to accept connections')) resolve();
      });
    });
    const urlOf = (name: string): string => `postgres://loadline@127.0.0.1:${port}/${name}`;
    const adminUrl = `postgres://postgres@127.0.0.1:${port}/postgres`;
    const passwordFile = join(folder, 'password');
    writeFileSync(passwordFile, 'only-for-the-check');
    const script = join(folder, 'owner.sql');
    writeFileSync(script, ownerScript(passwordFile));
    // As the image runs what it finds.
    run('psql', '--set=ON_ERROR_STOP=1', '--no-psqlrc', `--file=${script}`, adminUrl);
    const client = postgres(adminUrl, { max: 1 });
    await client.unsafe('create database target owner loadline');
    await client.end();
    const source = await openDatabase({ databaseUrl: urlOf('loadline') });
    await fillDatabase(source);
    const before = await contentOf(source);
    const file = join(folder, 'backup.dump');
    // While the bot is connected, as in real life.
    run(
      'pg_dump',
      '--format=custom',
      '--schema=loadline',
      '--schema=pgboss',
      `--file=${file}`,
      urlOf('loadline'),
    );
    await source.close();
    run(
      'pg_restore',
      '--no-owner',
      '--exit-on-error',
      '--single-transaction',
      `--dbname=${urlOf('target')}`,
      file,
    );
    const target = await openDatabase({ databaseUrl: urlOf('target') });
    const after = await contentOf(target);
    await target.close();
    if (!isDeepStrictEqual(after, before)) throw new Error('what was restored is not what was dumped');
    return ['passed', run('pg_dump', '--version').trim()];
  } finally {
    const ended = new Promise((resolve) => server.once('exit', resolve));
    if (server.exitCode === null) {
      server.kill('SIGINT');
      await ended;
    }
    rmSync(folder, { recursive: true, force: true });
  }
}
