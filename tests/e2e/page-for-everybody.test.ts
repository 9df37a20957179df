/** The rehearsal page for people with small screens, large letters, a keyboard or a screen reader. */
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { createLogger } from '../../src/logger.ts';
import { FACILITATOR_ID, FREE_CHANNEL } from '../../src/rehearsal/cast.ts';
import { openPage } from '../../src/rehearsal/open-page.ts';
import type { Rehearsal } from '../../src/rehearsal/rehearsal.ts';
import { readScenario } from '../../src/rehearsal/scenario.ts';
import { launchBrowser } from '../support/browser.ts';

const SCENARIO = new URL('../../src/rehearsal/scenarios/kept.json', import.meta.url);
const AXE = fileURLToPath(import.meta.resolve('axe-core/axe.min.js'));

let browser: Browser;
let rehearsal: Rehearsal;
let page: Page;

beforeAll(async () => {
  const logger = createLogger({ level: 'error', destination: process.stderr });
  [browser, rehearsal] = await Promise.all([
    launchBrowser(),
    readScenario(SCENARIO).then((scenario) => openPage({ scenario, logger, port: 0 })),
  ]);
});
afterAll(async () => {
  await browser?.close();
  await rehearsal?.stop();
});
afterEach(() => page?.close());

async function open(address: string, options: Parameters<Browser['newPage']>[0] = {}): Promise<void> {
  page = await browser.newPage({ viewport: { width: 1120, height: 760 }, locale: 'en-GB', ...options });
  page.setDefaultTimeout(60_000);
  await page.goto(`${rehearsal.standIn.url}/${address}`);
  await page.locator('#stream article, #stream .home, #stream .empty').last().waitFor();
}

const as = (memberId: string, place: string): string =>
  `#as=${rehearsal.cast.userIdOf(memberId)}&at=${place}`;
const form = () => page.locator('dialog[open]');
const inStream = (name: string) => page.locator('#stream').getByRole('button', { name, exact: true }).last();
const hasFocus = () => page.locator(':focus');

async function send(line: string): Promise<void> {
  await page.locator('#composer-box').fill(line);
  await page.locator('#composer-box').press('Enter');
}

/** The page, or parts of it, that would have to be pushed sideways to be seen as a whole. */
const sticksOut = () =>
  page.evaluate<string[]>(`[document.documentElement, ...document.querySelectorAll('body *')]
    .filter((node) => node.scrollWidth > node.clientWidth + 1 && node.clientWidth > 2)
    .filter((node) => node === document.documentElement || getComputedStyle(node).overflowX !== 'visible')
    .map((node) => node.tagName + ' ' + node.id + ' ' + node.className)`);

describe.each([
  ['a phone of 390 pixels', { viewport: { width: 390, height: 844 } }],
  ['200 % zoom', { viewport: { width: 560, height: 380 }, deviceScaleFactor: 2 }],
])('at %s everything can be read and used without pushing it sideways:', (_, size) => {
  const pick = async (name: string) => {
    await page.locator('#side-open').click();
    await page.locator('#side-lists').getByRole('button', { name }).click();
  };

  it('the first screen, the lists, the question and its form', async () => {
    await open('', size);
    expect(await sticksOut()).toEqual([]);
    await page.locator('#side-open').click();
    expect(await sticksOut()).toEqual([]);
    await page.locator('#side-lists').getByRole('button', { name: 'Petra' }).click();
    await page.locator('#side-open').getByText('Petra').waitFor();
    await inStream('Answer').click();
    await form()
      .getByLabel(/Tide table on the berth page: points left/)
      .fill('2');
    expect(await sticksOut()).toEqual([]);
    await form().getByRole('button', { name: 'Cancel' }).click();
    await form().waitFor({ state: 'hidden' });
  });

  it('the Home page, the status with its chart, the form of a set-up', async () => {
    await open(as('petra', 'home'), size);
    expect(await sticksOut()).toEqual([]);
    await pick('#quayside');
    await send('/loadline status');
    await page.locator('#stream img').last().waitFor();
    expect(await sticksOut()).toEqual([]);
    await pick('Facilitator');
    await pick('#your-team');
    await send('/loadline setup');
    await form().waitFor();
    expect(await sticksOut()).toEqual([]);
    await form().getByRole('button', { name: 'Cancel' }).click();
    await form().waitFor({ state: 'hidden' });
  });

  it('the menu of a message, and its thread', async () => {
    await open(as('petra', 'CTEAM00001'), size);
    await page.locator('#stream summary').first().click();
    await page
      .locator('#stream')
      .getByRole('button', { name: /^(Reply in thread|\d+ repl)/ })
      .first()
      .click();
    await send('@loadline cards');
    await page.locator('#stream').getByText('6 cards').last().waitFor();
    expect(await sticksOut()).toEqual([]);
    await page.getByRole('button', { name: 'Back to all messages' }).click();
  });
});

describe('the focus', () => {
  it('goes back to the button that opened a form when the form is closed', async () => {
    await open(as('odd', 'dm'));
    await inStream('Answer').focus();
    await page.keyboard.press('Enter');
    await form().waitFor();
    await page.keyboard.press('Escape');
    await form().waitFor({ state: 'hidden' });
    await hasFocus().getByText('Answer', { exact: true }).waitFor();
  });

  it('goes back to the message box after a form that a command opened', async () => {
    await open(as('odd', 'CTEAM00001'));
    await send('/loadline answer');
    await form().waitFor();
    await page.keyboard.press('Escape');
    await form().waitFor({ state: 'hidden' });
    expect(await hasFocus().getAttribute('id')).toBe('composer-box');
  });

  it('stays in a message whose button is gone when the message is brought up to date', async () => {
    await open(as('yusuf', 'dm'));
    await inStream('Nothing changed').focus();
    await page.keyboard.press('Enter');
    await page.locator('#stream').getByText('Recorded for Tue 3 Nov').last().waitFor();
    await page.locator('[data-ts]:has(:focus)').getByText('Recorded for Tue 3 Nov').waitFor();
  });

  it('goes back to the message from which a thread was opened', async () => {
    await open(as('odd', 'CTEAM00001'));
    const menu = page.locator('#stream summary').first();
    await menu.press('Enter');
    await page
      .locator('#stream')
      .getByRole('button', { name: /^(Reply in thread|\d+ repl)/ })
      .first()
      .press('Enter');
    await page.getByRole('button', { name: 'Back to all messages' }).press('Enter');
    expect(await hasFocus().getAttribute('data-key')).toBe(await menu.getAttribute('data-key'));
  });
});

it('every field of the answer form names its card', async () => {
  await open(as('ines', 'dm'));
  await inStream('Answer').click();
  await form().waitFor();
  const fields = form().locator('.label').filter({ hasNotText: 'More to say about' });
  const labels = await fields.allInnerTexts();
  expect(labels.length).toBeGreaterThan(0);
  for (const label of labels) expect(label).toMatch(/quay-4[12]/);
  await page.keyboard.press('Escape');
  await form().waitFor({ state: 'hidden' });
});

describe.each(['light', 'dark'] as const)(
  'in %s colours no rule of accessibility is broken',
  (colorScheme) => {
    /** What axe-core finds wrong, as one line for each element. */
    async function faults(): Promise<string[]> {
      await page.evaluate(await readFile(AXE, 'utf8'));
      return page.evaluate(async () => {
        const { axe } = globalThis as unknown as { axe: { run(): Promise<{ violations: Violation[] }> } };
        interface Violation {
          id: string;
          nodes: { html: string }[];
        }
        const { violations } = await axe.run();
        return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`));
      });
    }

    it('by the first screen, a form and the lists of a narrow window', async () => {
      await open('', { colorScheme });
      expect(await faults()).toEqual([]);
      await inStream('Answer').click();
      await form().waitFor();
      expect(await faults()).toEqual([]);
      await page.keyboard.press('Escape');
      await form().waitFor({ state: 'hidden' });
      await page.setViewportSize({ width: 390, height: 844 });
      await page.locator('#side-open').click();
      expect(await faults()).toEqual([]);
    });

    it('by the Home page, a message with a chart, and a form with lists and files', async () => {
      await open(as('ines', 'home'), { colorScheme });
      expect(await faults()).toEqual([]);
      await page.locator('#members').getByRole('button', { name: 'Facilitator' }).click();
      await page.locator('#places').getByRole('button', { name: '#quayside' }).click();
      await send('/loadline status');
      await page.locator('#stream img').last().waitFor();
      expect(await faults()).toEqual([]);
      await send('/loadline setup');
      await form().waitFor();
      expect(await faults()).toEqual([]);
      await page.keyboard.press('Escape');
      await form().waitFor({ state: 'hidden' });
      await send('/loadline import');
      await form().waitFor();
      expect(await faults()).toEqual([]);
      await page.keyboard.press('Escape');
      await form().waitFor({ state: 'hidden' });
    });
  },
);

it('a team is set up from nothing in a second channel, with an example of past sprints to import', async () => {
  await open(`#as=${FACILITATOR_ID}&at=${FREE_CHANNEL.id}`);
  await page.getByRole('button', { name: '/loadline setup' }).click();
  await page.locator('#composer-box').press('Enter');
  await form().waitFor();
  await form().getByRole('button', { name: 'Set up' }).click();
  await form().waitFor({ state: 'hidden' });
  await page
    .locator('#stream')
    .getByText(/is set up with/)
    .last()
    .waitFor();
  await page.getByRole('button', { name: '/loadline import' }).click();
  await page.locator('#composer-box').press('Enter');
  await form().getByRole('button', { name: 'Take the example past-sprints.csv' }).click();
  await form().getByText('past-sprints.csv', { exact: true }).waitFor();
  await form().getByRole('button', { name: 'Check' }).click();
  await form()
    .getByText(/8 sprints/)
    .first()
    .waitFor();
  await form().getByRole('button', { name: 'Import' }).click();
  await form().waitFor({ state: 'hidden' });
});
