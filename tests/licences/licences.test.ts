/** What is shipped, under which licences, and that the bill of materials names all of it. */
import { access, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { licencePage } from './licence-page.ts';
import { shippedBill } from './shipped-bill.ts';
import { shippedPackages, spdxOf } from './shipped-packages.ts';

const ROOT = join(import.meta.dirname, '../..');
const satisfies = createRequire(import.meta.url)('spdx-satisfies') as (
  expression: string,
  allowed: readonly string[],
) => boolean;

/** Licences under which a program may be used, changed and passed on without opening one's own source. */
const ALLOWED = [
  '0BSD',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'BlueOak-1.0.0',
  'CC0-1.0',
  'ISC',
  'MIT',
  'PSF-2.0',
  'Unlicense',
  'LicenseRef-public-domain',
  // A library’s own files, when changed, stay under it; a program that uses it doesn’t come under it.
  'MPL-2.0',
  // For data: may be used when its makers are named, as docs/licences.md does.
  'CC-BY-3.0',
  // For fonts: may be passed on with a program.
  'OFL-1.1',
];

const packages = await shippedPackages();

describe('the packages that are shipped', () => {
  it('are under licences that allow it', () => {
    expect(packages.length).toBeGreaterThan(100);
    const others = packages.filter(({ licence }) => licence === undefined || !satisfies(licence, ALLOWED));
    expect(others.map(({ name, licence }) => `${name}: ${licence}`)).toEqual([]);
  });

  it('would not be, with a licence that asks for one’s own source, or with one of two that does not fit', () => {
    expect(satisfies('GPL-3.0-only', ALLOWED)).toBe(false);
    expect(satisfies('MIT AND AGPL-3.0-only', ALLOWED)).toBe(false);
    expect(satisfies('MIT OR GPL-3.0-only', ALLOWED)).toBe(true);
  });

  it('say the same of their licence themselves as the lock file does', async () => {
    const checked: string[] = [];
    for (const { name, path, licence, isOptional } of packages) {
      const file = join(ROOT, path, 'package.json');
      // Packages for other kinds of machines are not installed here.
      if (
        isOptional &&
        !(await access(file).then(
          () => true,
          () => false,
        ))
      )
        continue;
      const own = JSON.parse(await readFile(file, 'utf8')) as { license?: unknown };
      if (typeof own.license === 'string') expect([name, spdxOf(own.license)]).toEqual([name, licence]);
      checked.push(name);
    }
    expect(checked.length).toBeGreaterThan(100);
  });

  it('are fixed to their content, and run nothing when they are installed', () => {
    expect(
      packages.filter(({ integrity }) => !integrity?.startsWith('sha512-')).map(({ name }) => name),
    ).toEqual([]);
    expect(packages.filter(({ hasInstallScript }) => hasInstallScript).map(({ name }) => name)).toEqual([]);
  });

  it('are on the page of licences, which npm run licences brings up to date', async () => {
    expect(await readFile(join(ROOT, 'docs/licences.md'), 'utf8')).toBe(licencePage(packages));
  });

  it('are all named in the bill of materials that npm makes, and development’s are not', async () => {
    const bill = await shippedBill(ROOT);
    expect(bill.bomFormat).toBe('CycloneDX');
    const named = bill.components.map(({ name, version }) => `${name}@${version}`);
    const shipped = packages.map(({ name, version }) => `${name}@${version}`);
    const needed = packages.filter(({ isOptional }) => !isOptional);
    expect(
      needed.map(({ name, version }) => `${name}@${version}`).filter((one) => !named.includes(one)),
    ).toEqual([]);
    expect(named.filter((one) => !shipped.includes(one))).toEqual([]);
    const refs = new Set(bill.components.map((component) => component['bom-ref']));
    expect(refs.size).toBe(bill.components.length);
    expect(
      bill.dependencies.flatMap(({ dependsOn }) => dependsOn ?? []).filter((ref) => !refs.has(ref)),
    ).toEqual([]);
    for (const { purl, hashes } of bill.components) {
      expect(purl).toMatch(/^pkg:npm\//);
      expect(hashes?.[0]?.alg).toBe('SHA-512');
    }
  });
});
