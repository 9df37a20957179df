/**
 * Starts the browser for tests of the page: the bundled Chromium on Linux, so that nothing needs to be
 * installed by hand; elsewhere the Chrome that is installed.
 */
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import chromiumBundle, { inflate } from '@sparticuz/chromium';
import { type Browser, chromium } from 'playwright-core';

/**
 * Not the bundle's own list, which is made for short-lived cloud functions: one process for everything (closing
 * a page ends the browser) and no same-origin checks. Containers seldom allow the sandbox, and only our own page
 * is opened.
 */
const ARGUMENTS = ['--no-sandbox', '--disable-gpu'];

/** Starts a headless browser; the caller closes it. @throws Error that says how to get a missing part */
export async function launchBrowser(): Promise<Browser> {
  try {
    if (process.platform !== 'linux') return await chromium.launch({ channel: 'chrome' });
    const executablePath = await chromiumBundle.executablePath();
    const options = { executablePath, args: ARGUMENTS };
    return await chromium.launch(options).catch(async (cause: unknown) => {
      if (missingLibrary(String(cause)) === undefined) throw cause;
      return chromium.launch({
        ...options,
        env: { ...process.env, LD_LIBRARY_PATH: await bundledLibraries() },
      });
    });
  } catch (cause) {
    throw new Error(howToMend(process.platform, String(cause)), { cause });
  }
}

/** Unpacks the libraries that the bundle brings for bare machines. @returns their folder */
async function bundledLibraries(): Promise<string> {
  const entry = fileURLToPath(import.meta.resolve('@sparticuz/chromium'));
  await inflate(join(entry, '../../bin/al2023.tar.br'));
  return join(tmpdir(), 'al2023', 'lib');
}

function missingLibrary(failure: string): string | undefined {
  return /(lib[\w.+-]+\.so[\w.]*)/.exec(failure)?.[1];
}

/** What to do about a browser that does not start, from the words of its failure. */
export function howToMend(platform: string, failure: string): string {
  if (platform !== 'linux') return 'The browser tests need Google Chrome: install it and run them again.';
  const missing = missingLibrary(failure);
  return [
    'The bundled Chromium did not start.',
    missing ? `It misses the library ${missing}.` : 'See the cause below.',
    'On Debian or Ubuntu, `apt-get install libnss3` brings what it usually lacks;',
    'it also unpacks about 210 MB into the folder for temporary files.',
  ].join(' ');
}
