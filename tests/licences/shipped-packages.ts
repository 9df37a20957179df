/** The packages that an installation without development's packages holds, from the lock file. */
import { readFile } from 'node:fs/promises';

const LOCK = new URL('../../package-lock.json', import.meta.url);

export interface ShippedPackage {
  readonly name: string;
  /** Where it lies, from the repository’s folder; one of another version lies below the package that needs it. */
  readonly path: string;
  readonly version: string;
  /** An SPDX expression, as the package itself says. */
  readonly licence: string | undefined;
  readonly integrity: string | undefined;
  readonly hasInstallScript: boolean;
  /** Only installed on machines of its kind. */
  readonly isOptional: boolean;
}

/** What packages wrote before SPDX had a name for it. */
const SPDX_NAMES: Readonly<Record<string, string>> = { 'Public Domain': 'LicenseRef-public-domain' };

/** The SPDX expression for what a package says. */
export function spdxOf(licence: string): string {
  return SPDX_NAMES[licence] ?? licence;
}

interface LockEntry {
  readonly version: string;
  readonly license?: string;
  readonly integrity?: string;
  readonly hasInstallScript?: boolean;
  readonly dev?: boolean;
  readonly optional?: boolean;
}

/** In order of name; a package that is there in two versions is listed twice. */
export async function shippedPackages(): Promise<ShippedPackage[]> {
  const { packages } = JSON.parse(await readFile(LOCK, 'utf8')) as { packages: Record<string, LockEntry> };
  return Object.entries(packages)
    .filter(([path, { dev }]) => path !== '' && !dev)
    .map(([path, entry]) => ({
      name: path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length),
      path,
      version: entry.version,
      licence: entry.license && spdxOf(entry.license),
      integrity: entry.integrity,
      hasInstallScript: entry.hasInstallScript ?? false,
      isOptional: entry.optional ?? false,
    }))
    .toSorted((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.version.localeCompare(b.version)));
}
