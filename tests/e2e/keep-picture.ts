/** Keeps a picture of the page when a folder is asked for, for the README and for looking at. */
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';

/** Does nothing unless `LOADLINE_PICTURES` names a folder. */
export async function keepPicture(page: Page, name: string): Promise<void> {
  const folder = process.env.LOADLINE_PICTURES;
  if (!folder) return;
  await mkdir(folder, { recursive: true });
  await page.screenshot({ path: join(folder, `${name}.png`) });
}
