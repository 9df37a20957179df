/** `npm run licences`: rewrites `docs/licences.md`. */
import { writeFile } from 'node:fs/promises';
import { licencePage } from './licence-page.ts';
import { shippedPackages } from './shipped-packages.ts';

await writeFile(new URL('../../docs/licences.md', import.meta.url), licencePage(await shippedPackages()));
