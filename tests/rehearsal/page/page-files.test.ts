import { readFile } from 'node:fs/promises';
import type { Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { withOpenPage } from './open-page.ts';
import { SHARED_NAME } from './sample-app.ts';

const open = withOpenPage();

const csv = (name: string, sizeBytes = 1_400) => ({
  name,
  mimeType: 'text/csv',
  buffer: Buffer.alloc(sizeBytes, 'a'),
});

async function form(): Promise<Locator> {
  await open.send('/loadline files');
  const dialog = open.page.getByRole('dialog', { name: 'Past sprints' });
  await dialog.waitFor();
  return dialog;
}

const listed = (dialog: Locator, block: string) =>
  dialog.locator(`[data-block=${block}] .picked .file-name`).allInnerTexts();

describe('a field for files', () => {
  it('has its label and hint, says what it holds, and is the first thing in reach of the keyboard', async () => {
    const dialog = await form();
    const field = dialog.getByLabel('Sprints');
    expect(await field.evaluate((node) => node === node.ownerDocument.activeElement)).toBe(true);
    expect(await field.getAttribute('accept')).toBe('.csv');
    expect(await field.getAttribute('multiple')).toBeNull();
    expect(await dialog.getByLabel('Notes').getAttribute('multiple')).toBe('');
    const described = async () => {
      const ids = String(await field.getAttribute('aria-describedby')).split(' ');
      return Promise.all(ids.map((id) => dialog.locator(`#${id}`).textContent()));
    };
    expect(await described()).toEqual(['Nothing picked yet.', 'A spreadsheet saved as CSV.']);
    await field.setInputFiles(csv('past.csv'));
    await dialog.getByText('past.csv').waitFor();
    expect((await described())[0]).toMatch(/^past\.csv1\.4 kBTake off$/);
  });

  it('opens the choice of files by the keyboard alone', async () => {
    // Asked for before the form opens: the browser takes a moment to hand its choice of files over to the test, and
    // a key pressed within it would open a window that nobody sees.
    const choice = open.page.waitForEvent('filechooser');
    const dialog = await form();
    await open.page.keyboard.press('Space');
    await (await choice).setFiles(csv('past.csv'));
    await dialog.getByText('past.csv').waitFor();
    await open.page.keyboard.press('Tab');
    await open.page.keyboard.press('Enter');
    await dialog.getByText('past.csv').waitFor({ state: 'detached' });
    expect(
      await dialog.getByLabel('Sprints').evaluate((node) => node === node.ownerDocument.activeElement),
    ).toBe(true);
  });

  it('for one file takes the latest; for several it collects them, and each can be taken off', async () => {
    const dialog = await form();
    await dialog.getByLabel('Sprints').setInputFiles(csv('old.csv'));
    await dialog.getByLabel('Sprints').setInputFiles(csv('new.csv'));
    await dialog.getByText('new.csv').waitFor();
    await dialog.getByLabel('Notes').setInputFiles([csv('a.txt'), csv('b.txt')]);
    await dialog.getByLabel('Notes').setInputFiles(csv('c.txt'));
    await dialog.getByText('c.txt').waitFor();
    await dialog.getByRole('button', { name: 'Take off b.txt' }).click();
    expect(await listed(dialog, 'main')).toEqual(['new.csv']);
    expect(await listed(dialog, 'more')).toEqual(['a.txt', 'c.txt']);
    await dialog.getByRole('button', { name: 'Read them' }).click();
    await dialog.waitFor({ state: 'hidden' });
    expect(open.app.heard).toEqual([['new.csv', 'a.txt', 'c.txt']]);
  });

  it('keeps its files when the form comes back with an error, and when the page is loaded again', async () => {
    const dialog = await form();
    await dialog.getByLabel('Sprints').setInputFiles(csv('bad.csv'));
    await dialog.getByLabel('Notes').setInputFiles(csv('a.txt'));
    await dialog.getByRole('button', { name: 'Read them' }).click();
    const error = dialog.getByText('Line 2 is bad.');
    await error.waitFor();
    expect(await listed(dialog, 'main')).toEqual(['bad.csv']);
    expect(await listed(dialog, 'more')).toEqual(['a.txt']);
    expect(await dialog.getByLabel('Sprints').getAttribute('aria-invalid')).toBe('true');
    await open.goTo('#as=U0ANA0000');
    await dialog.waitFor();
    expect(await listed(dialog, 'main')).toEqual(['bad.csv']);
    await dialog.getByLabel('Sprints').setInputFiles(csv('good.csv'));
    await dialog.getByRole('button', { name: 'Read them' }).click();
    await dialog.waitFor({ state: 'hidden' });
    expect(open.app.heard).toEqual([
      ['bad.csv', 'a.txt'],
      ['good.csv', 'a.txt'],
    ]);
  });

  it('is sent with a file that was picked the moment before', async () => {
    const dialog = await form();
    await open.page.route('**/page/pick-file*', async (route) => {
      // The button is pressed while the file is still on its way.
      await dialog.getByRole('button', { name: 'Read them' }).click();
      await route.continue();
    });
    await dialog.getByLabel('Sprints').setInputFiles(csv('late.csv'));
    await dialog.waitFor({ state: 'hidden' });
    expect(open.app.heard).toEqual([['late.csv']]);
  });

  it('says at the field when the workspace does not take a file', async () => {
    const dialog = await form();
    await open.page.route('**/page/pick-file*', (route) =>
      route.fulfill({ status: 400, json: { error: 'That is too long.' } }),
    );
    await dialog.getByLabel('Sprints').setInputFiles(csv('past.csv'));
    await dialog.getByRole('alert').getByText('past.csv: That is too long.').waitFor();
    expect(await listed(dialog, 'main')).toEqual([]);
  });

  it('is held back by the workspace without a file, or with one of another kind', async () => {
    const dialog = await form();
    await dialog.getByRole('button', { name: 'Read them' }).click();
    await dialog.locator('[data-block=main] .error', { hasText: 'Please fill this in.' }).waitFor();
    expect(
      await dialog.getByLabel('Sprints').evaluate((node) => node === node.ownerDocument.activeElement),
    ).toBe(true);
    await dialog.getByLabel('Sprints').setInputFiles(csv('past.xlsx'));
    await dialog.getByText('past.xlsx').waitFor();
    await dialog.getByRole('button', { name: 'Read them' }).click();
    await dialog.getByText('“past.xlsx” is not a file of this kind: csv.').waitFor();
    expect(open.app.heard).toEqual([]);
  });
});

describe('a message with files', () => {
  async function shared(): Promise<Locator> {
    await open.send('/loadline share');
    const entry = open.page.locator('article', { hasText: 'All that is kept.' });
    await entry.getByRole('link', { name: SHARED_NAME }).waitFor();
    return entry;
  }

  it('names each with its size, and saves it instead of showing it', async () => {
    const entry = await shared();
    const rows = entry.getByRole('list', { name: '2 files' }).getByRole('listitem');
    expect(await rows.allInnerTexts()).toEqual([
      expect.stringMatching(/whole year to date\.csv\s+1\.5 kB$/),
      expect.stringMatching(/^page\.html\s+32 bytes$/),
    ]);
    for (const [name, start] of [
      [SHARED_NAME, 'name,first day\n'],
      ['page.html', '<script>window.broken=4</script>'],
    ] as const) {
      const download = open.page.waitForEvent('download');
      await entry.getByRole('link', { name }).click();
      const saved = await download;
      expect((await readFile(await saved.path(), 'utf8')).startsWith(start)).toBe(true);
      // Browsers put another sign for those that a file's name can not hold.
      expect(saved.suggestedFilename().replaceAll(/[^a-z.]/g, '')).toBe(name.replaceAll(/[^a-z.]/g, ''));
    }
    expect(new URL(open.page.url()).pathname).toBe('/');
  });

  it('is read out with the names of its files', async () => {
    const entry = await shared();
    await open.page.getByRole('button', { name: 'Read as text' }).click();
    expect(await entry.locator('.plain').allInnerTexts()).toEqual([
      'All that is kept.',
      `File: ${SHARED_NAME}, 1.5 kB`,
      'File: page.html, 32 bytes',
    ]);
    expect(await open.page.locator('#spoken').textContent()).toContain('File: page.html, 32 bytes.');
  });
});

it('at the width of a phone neither files of messages nor of forms stick out', async () => {
  await open.page.setViewportSize({ width: 320, height: 640 });
  await open.send('/loadline share');
  await open.page.getByRole('link', { name: SHARED_NAME }).waitFor();
  const dialog = await form();
  await dialog.getByLabel('Sprints').setInputFiles(csv(`${'long'.repeat(30)}.csv`));
  await dialog.getByRole('button', { name: /^Take off/ }).waitFor();
  const wide = await open.page
    .locator('.stream, .sheet-body')
    .evaluateAll((nodes) => nodes.map((node) => node.scrollWidth - node.clientWidth));
  expect(wide).toEqual([0, 0]);
});
