/** The lock file, development's packages included: nothing is installed unseen, and nothing runs that was not named. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

interface LockedPackage {
  readonly integrity?: string;
  readonly hasInstallScript?: boolean;
  readonly resolved?: string;
  readonly link?: boolean;
}

const ROOT = join(import.meta.dirname, '../..');
const read = <T>(file: string): T => JSON.parse(readFileSync(join(ROOT, file), 'utf8')) as T;
const { packages } = read<{ packages: Record<string, LockedPackage> }>('package-lock.json');
const { allowScripts } = read<{ allowScripts: Record<string, boolean> }>('package.json');
const locked = Object.entries(packages).filter(([path]) => path !== '');

describe('the lock file', () => {
  it('holds a checksum of every package, and no place of its own to take it from', () => {
    expect(locked.length).toBeGreaterThan(100);
    const loose = locked.filter(
      ([, { integrity, resolved, link }]) =>
        !/^sha512-[A-Za-z0-9+/]{86}==$/.test(integrity ?? '') || link === true || resolved !== undefined,
    );
    expect(loose.map(([path]) => path)).toEqual([]);
  });

  it('holds install scripts of those packages only that are allowed by name', () => {
    const withScript = locked
      .filter(([, { hasInstallScript }]) => hasInstallScript)
      .map(([path]) => path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length));
    const allowed = Object.keys(allowScripts).filter((name) => allowScripts[name]);
    expect([...new Set(withScript)].sort()).toEqual(allowed.sort());
  });
});
