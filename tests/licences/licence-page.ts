/** `docs/licences.md`, made from the lock file. */
import type { ShippedPackage } from './shipped-packages.ts';

const HEAD = `# Licences

Loadline itself is under the [MIT licence](../LICENSE). An installation brings these packages along, each under its own
licence, the text of which lies in its folder below \`node_modules\`. Tools for development are not in the list. It is made
by \`npm run licences\`; a test compares it with the lock file.

| package | licence |
|---|---|
`;

export function licencePage(packages: readonly ShippedPackage[]): string {
  const rows = packages.map(({ name, licence }) => `| ${name} | ${licence ?? 'not stated'} |\n`);
  return HEAD + [...new Set(rows)].join('');
}
