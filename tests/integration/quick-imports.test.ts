/** In processes of their own: the hook stays for the life of a process. */
import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';

const HOOK = new URL('../../src/quick-imports.ts', import.meta.url).href;
const STORE = new URL('../../src/store/', import.meta.url);
const ENTRIES = [
  'drizzle-orm',
  'drizzle-orm/pg-core',
  'drizzle-orm/pglite',
  'drizzle-orm/postgres-js/migrator',
  'date-fns/addDays',
  'date-fns/format',
  new URL('../app/use-cases.ts', STORE).href,
];
const PACKAGES = ['drizzle-orm', 'date-fns'];

/** Prints where each entry and each of its modules was found, in order. */
async function found(before: string): Promise<string[]> {
  const script = `${before}
    const { registerHooks, createRequire } = await import('node:module');
    const urls = new Set();
    registerHooks({ load(url, context, next) { urls.add(context.format + ' ' + url); return next(url, context); } });
    for (const entry of ${JSON.stringify(ENTRIES)}) await import(entry);
    for (const name of ${JSON.stringify(PACKAGES)}) urls.add(createRequire(${JSON.stringify(STORE.href)}).resolve(name));
    console.log(JSON.stringify([...urls].sort()));`;
  const { stdout } = await promisify(execFile)(
    process.execPath,
    ['--disable-warning=ExperimentalWarning', '--input-type=module', '--eval', script],
    { cwd: STORE.pathname },
  );
  return JSON.parse(stdout) as string[];
}

test('every module is found where Node.js itself finds it, and read as it reads it', async () => {
  const usual = await found('');
  for (const part of [...PACKAGES.map((name) => `/node_modules/${name}/`), '/src/sprint/', '/src/app/']) {
    expect(usual.filter((url) => url.includes(part)).length).toBeGreaterThan(10);
  }
  const quick = await found(
    `const { quickenImports } = await import(${JSON.stringify(HOOK)}); quickenImports();`,
  );
  expect(quick).toEqual(usual);
});
