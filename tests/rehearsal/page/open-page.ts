/** Opens the rehearsal page of a sample workspace in a real browser, for the tests of one file. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import type { StandInOptions } from '../../../src/rehearsal/stand-in/stand-in-options.ts';
import { launchBrowser } from '../../support/browser.ts';
import { type SampleApp, startSampleApp } from './sample-app.ts';

interface OpenPage {
  page: Page;
  app: SampleApp;
  /** Writes a line in the message box and sends it. */
  send(line: string): Promise<void>;
  /** Loads the page again as this member, at this place: `#as=U0BO00000&at=dm`. */
  goTo(address: string): Promise<void>;
}

/**
 * A fresh workspace and page before each test. After it, nothing may have been written to the browser's console:
 * neither failures of the page's code nor refusals by its content security policy.
 */
export function withOpenPage(more: Partial<StandInOptions> = {}): OpenPage {
  const open = {} as OpenPage;
  let browser: Browser;
  let complaints: string[];

  beforeAll(async () => {
    browser = await launchBrowser();
  });
  afterAll(() => browser?.close());
  beforeEach(async () => {
    complaints = [];
    open.app = await startSampleApp(more);
    open.page = await browser.newPage({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
    open.page.on('pageerror', (error) => complaints.push(error.message));
    open.page.on('console', (message) => complaints.push(message.text()));
    open.send = async (line) => {
      await open.page.locator('#composer-box').fill(line);
      await open.page.locator('#composer-box').press('Enter');
    };
    open.goTo = async (address) => {
      await open.page.goto('about:blank');
      await open.page.goto(`${open.app.standIn.url}/${address}`);
      await open.page.locator('#members [aria-pressed=true]').waitFor();
    };
    await open.goTo('#as=U0ANA0000');
  });
  afterEach(async () => {
    await open.page.close();
    await open.app.stop();
    // The browser also notes each refused request; refusals are the workspace's way to say no, not a failure.
    const unexpected = complaints.filter((words) => !/^Failed to load resource: .* 40[04]/.test(words));
    expect(unexpected).toEqual([]);
  });
  return open;
}
