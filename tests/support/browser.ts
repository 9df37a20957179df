/**
 * Starts the browser for tests of the page: the bundled Chromium on Linux, so that nothing needs to be
 * installed by hand; elsewhere the Chrome that is installed.
 */
import chromiumBundle from '@sparticuz/chromium';
import { type Browser, chromium } from 'playwright-core';

/**
 * Not the bundle's own list, which is made for short-lived cloud functions: one process for everything (closing
 * a page ends the browser) and no same-origin checks. Containers seldom allow the sandbox, and only our own page
 * is opened.
 */
const ARGUMENTS = ['--no-sandbox', '--disable-gpu'];

/** Starts a headless browser; the caller closes it. @throws Error that says how to mend a missing part */
export async function launchBrowser(): Promise<Browser> {
  try {
    if (process.platform !== 'linux') return await chromium.launch({ channel: 'chrome' });
    const executablePath = await chromiumBundle.executablePath();
    return await chromium.launch({ executablePath, args: ARGUMENTS });
  } catch (cause) {
    throw new Error(howToMend(process.platform, String(cause)), { cause });
  }
}

/** What to do about a browser that does not start, from the words of its failure. */
export function howToMend(platform: string, failure: string): string {
  if (platform !== 'linux') return 'The browser tests need Google Chrome: install it and run them again.';
  const missing = /(lib[\w.+-]+\.so[\w.]*)/.exec(failure)?.[1];
  return [
    'The bundled Chromium did not start.',
    missing ? `It misses the library ${missing}.` : 'See the cause below.',
    'On Debian or Ubuntu, `apt-get install libnss3` brings what it usually lacks;',
    'it also unpacks about 210 MB into the folder for temporary files.',
  ].join(' ');
}
