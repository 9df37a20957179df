/** `docs/licences.md`, made from the lock file. */
import type { ShippedPackage } from './shipped-packages.ts';

const HEAD = `# Licences

Loadline itself is under the [MIT licence](../LICENSE). An installation brings these packages along, each under its own
licence, the text of which lies in its folder below \`node_modules\`. Tools for development are not in the list. It is made
by \`npm run licences\`; a test compares it with the lock file.

The days of public holidays come from [date-holidays](https://github.com/commenthol/date-holidays) by commenthol and contributors,
unchanged. Its package names CC-BY-3.0 for the data, its licence file [CC BY-SA
3.0](https://creativecommons.org/licenses/by-sa/3.0/), since the data follows articles of Wikipedia; the file lists them.
[ical.js](https://github.com/kewisch/ical.js) is used unchanged under the [MPL-2.0](https://www.mozilla.org/MPL/2.0/).

| package | licence |
|---|---|
`;

export function licencePage(packages: readonly ShippedPackage[]): string {
  const rows = packages.map(({ name, licence }) => `| ${name} | ${licence ?? 'not stated'} |\n`);
  return HEAD + [...new Set(rows)].join('');
}
