/** A whole sprint in the rehearsal page, in a real browser, as a newcomer would play it. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createLogger } from '../../src/logger.ts';
import { openPage } from '../../src/rehearsal/open-page.ts';
import type { Rehearsal } from '../../src/rehearsal/rehearsal.ts';
import { readScenario } from '../../src/rehearsal/scenario.ts';
import { launchBrowser } from '../support/browser.ts';

const SCENARIO = new URL('../../src/rehearsal/scenarios/kept.json', import.meta.url);

/** Everything here runs for real: database, delivery, charts, signed requests. */
const WAIT = { timeout: 60_000 };

describe('a sprint in the rehearsal page', () => {
  let browser: Browser;
  let page: Page;
  let rehearsal: Rehearsal;
  const complaints: string[] = [];

  beforeAll(async () => {
    const logger = createLogger({ level: 'error', destination: process.stderr });
    [browser, rehearsal] = await Promise.all([
      launchBrowser(),
      readScenario(SCENARIO).then((scenario) => openPage({ scenario, logger, port: 0 })),
    ]);
    page = await browser.newPage({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' });
    page.setDefaultTimeout(WAIT.timeout);
    page.on('pageerror', (error) => complaints.push(error.message));
    page.on('console', (message) => complaints.push(message.text()));
    await page.goto(`${rehearsal.standIn.url}/`);
  });

  afterAll(async () => {
    await browser?.close();
    await rehearsal?.stop();
  });

  const be = (name: string) => page.locator('#members').getByRole('button', { name }).click();
  const goTo = (place: string) => page.locator('#places').getByRole('button', { name: place }).click();
  const press = (name: string) => page.getByRole('button', { name, exact: true }).last().click();
  const send = async (line: string) => {
    await page.locator('#composer-box').fill(line);
    await page.locator('#composer-box').press('Enter');
  };
  const form = () => page.locator('dialog[open]');
  const sees = (words: string | RegExp) => page.locator('#stream').getByText(words).last().waitFor(WAIT);

  it('begins in an invented sprint on its second morning, at a member’s question for today', async () => {
    await page.getByText('What to try').first().waitFor(WAIT);
    await sees('Tue 3 Nov: what is left on your cards?');
    const answer = page.locator('#stream').getByRole('button', { name: 'Answer', exact: true }).last();
    expect(await answer.evaluate((button) => button.getBoundingClientRect().bottom)).toBeLessThan(700);
  });

  it('welcomes somebody who opens the direct messages for the first time', async () => {
    await be('Facilitator');
    await sees('Hello, I’m Loadline');
  });

  it('has a Home page to work on, whose buttons change it in place', async () => {
    await be('Ines');
    await goTo('Home page');
    await sees(/Your open card/);
    await press('Away today');
    await sees('You are away today.');
    await press('More');
    await page.locator('#stream').getByRole('button', { name: 'History', exact: true }).waitFor(WAIT);
    await goTo('Direct messages');
    await be('Odd');
    await sees('Tue 3 Nov: what is left on your cards?');
  });

  it('has a shortcut that opens the answer form from anywhere', async () => {
    await page.locator('#shortcuts').getByRole('button', { name: 'Answer for my cards' }).click();
    await form().getByRole('heading', { name: 'What is left?' }).waitFor(WAIT);
    await form().getByRole('button', { name: 'Cancel' }).click();
  });

  it('lets a member answer in the form, asks why a card grew, and brings the prompt up to date', async () => {
    await press('Answer');
    await form().getByRole('heading', { name: 'What is left?' }).waitFor(WAIT);
    await form()
      .getByLabel(/quay-43 Confirmation by mail: points left/)
      .fill('lots');
    await form().getByRole('button', { name: 'Record' }).click();
    await form()
      .getByText(/Write points in halves/)
      .waitFor(WAIT);
    expect(
      await form()
        .getByLabel(/quay-43 Confirmation by mail: points left/)
        .inputValue(),
    ).toBe('lots');
    await form()
      .getByLabel(/quay-43 Confirmation by mail: points left/)
      .fill('4');
    await form().getByRole('button', { name: 'Record' }).click();
    await form().getByRole('heading', { name: 'Why did it grow?' }).waitFor(WAIT);
    expect(
      await form()
        .getByLabel(/quay-43 Confirmation by mail: points left/)
        .inputValue(),
    ).toBe('4');
    await form()
      .getByLabel(/how many were surprise work/)
      .fill('1');
    await form()
      .getByLabel(/what came up/)
      .fill('The mail server wants a signature');
    await form().getByRole('button', { name: 'Record' }).click();
    await form().waitFor({ state: 'hidden' });
    await sees(/quay-43 Confirmation by mail: worked 0, 4 points left, surprise work \+1/);
  });

  it('understands an answer in words', async () => {
    await be('Yusuf');
    await goTo('Direct messages');
    await send('2.5');
    await sees(/quay-46 Cancel a booking: worked 0.5, 2.5 points left/);
  });

  it('shows the status with a chart to the caller alone', async () => {
    await goTo('#quayside');
    await send('/loadline status');
    await sees(/1 point of surprise work/);
    await page.locator('#stream img').last().waitFor(WAIT);
    await be('Petra');
    await goTo('#quayside');
    expect(await page.locator('#stream img').count()).toBe(0);
  });

  it('closes the sprint by itself and shows the verdict with its chart in the channel', async () => {
    await goTo('Direct messages');
    await press('To the sprint’s end');
    await page.getByRole('heading', { name: '#quayside' }).waitFor(WAIT);
    await sees(/^Harbour 12: kept/);
    const chart = page.locator('#stream img').last();
    await chart.waitFor(WAIT);
    expect(await chart.getAttribute('alt')).toMatch(/^Burndown of the sprint “Harbour 12”/);
    await expect
      .poll(() => chart.evaluate((image) => (image as unknown as { naturalWidth: number }).naturalWidth))
      .toBe(800);
  });

  it('lets the facilitator plan the next sprint; bad lines are named and nothing typed is lost', async () => {
    await be('Facilitator');
    await goTo('#quayside');
    await send('/loadline plan');
    const cards = form().getByLabel(/Cards, one a line/);
    await cards.waitFor(WAIT);
    expect(
      await form()
        .getByLabel(/Sprint name/)
        .inputValue(),
    ).toBe('Harbour 13');
    await cards.fill('Pay by card, 8, @ines\nReceipt, five, @odd\nReminder, ½, @petra');
    await form().getByRole('button', { name: 'Preview' }).click();
    await form()
      .getByText(/Line 2: “five” isn’t an estimate/)
      .waitFor(WAIT);
    expect(await cards.inputValue()).toContain('Receipt, five, @odd');
    await cards.fill('Pay by card, 8, @ines\nReceipt, 5, @odd\nReminder, ½, @petra');
    await form().getByRole('button', { name: 'Preview' }).click();
    await form()
      .getByText(/13\.5 points/)
      .first()
      .waitFor(WAIT);
    await form().getByRole('button', { name: 'Commit' }).click();
    await form().waitFor({ state: 'hidden' });
    await sees(/the team commits to 13.5 points on 3 cards/);
  });

  it('takes the new sprint to a kept verdict through words alone', async () => {
    await press('Next day');
    await press('Next day');
    await press('Next day');
    await be('Ines');
    await goTo('Direct messages');
    await sees(/Mon 16 Nov: .* begins/);
    await send('0');
    await sees(/Pay by card: worked 8, nothing left/);
    await be('Odd');
    await goTo('Direct messages');
    await send('same');
    await sees(/Recorded for Mon 16 Nov in Harbour 13: nothing changed/);
    await send('0 worked 5');
    await sees(/Receipt: worked 5, nothing left/);
    await be('Petra');
    await goTo('Direct messages');
    await send('away');
    await sees(/you are away/);
    await press('To the sprint’s end');
    await goTo('#quayside');
    await sees(/^Harbour 13: kept/);
    await page.locator('#stream img').last().waitFor(WAIT);
  });

  it('leaves no complaint in the browser’s console', () => {
    expect(complaints.filter((words) => !/Failed to load resource: .* 40[04]/.test(words))).toEqual([]);
  });
});
