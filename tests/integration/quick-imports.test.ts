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
];

/** Prints where each entry and each of its modules was found, in order. */
async function found(before: string): Promise<string[]> {
  const script = `${before}
    const { registerHooks, createRequire } = await import('node:module');
    const urls = new Set();
    registerHooks({ load(url, context, next) { urls.add(url); return next(url, context); } });
    for (const entry of ${JSON.stringify(ENTRIES)}) await import(entry);
    urls.add(createRequire(${JSON.stringify(STORE.href)}).resolve('drizzle-orm'));
    console.log(JSON.stringify([...urls].sort()));`;
  const { stdout } = await promisify(execFile)(
    process.execPath,
    ['--disable-warning=ExperimentalWarning', '--input-type=module', '--eval', script],
    { cwd: STORE.pathname },
  );
  return JSON.parse(stdout) as string[];
}

test('every module is found where Node.js itself finds it', async () => {
  const usual = await found('');
  expect(usual.filter((url) => url.includes('/drizzle-orm/')).length).toBeGreaterThan(50);
  const quick = await found(
    `const { quickenImports } = await import(${JSON.stringify(HOOK)}); quickenImports();`,
  );
  expect(quick).toEqual(usual);
});
