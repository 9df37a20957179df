/** Takes the README's pictures from the rehearsal page: `npm run pictures`. */
import { createLogger } from '../../src/logger.ts';
import { openPage } from '../../src/rehearsal/open-page.ts';
import { readScenario } from '../../src/rehearsal/scenario.ts';
import { launchBrowser } from '../support/browser.ts';

const SCENARIO = new URL('../../src/rehearsal/scenarios/kept.json', import.meta.url);
const DOCS = new URL('../../docs/', import.meta.url).pathname;

const rehearsal = await openPage({
  scenario: await readScenario(SCENARIO),
  logger: createLogger({ level: 'error', destination: process.stderr }),
  port: 0,
});
const browser = await launchBrowser();
const page = await browser.newPage({
  viewport: { width: 1120, height: 640 },
  locale: 'en-GB',
  bypassCSP: true,
});
const press = (name: string) => page.getByRole('button', { name, exact: true }).last().click();

await page.goto(`${rehearsal.standIn.url}/`);
await press('Got it');
await page.locator('#members').getByRole('button', { name: 'Odd' }).click();
await page.locator('#places').getByRole('button', { name: 'Direct messages' }).click();
await page.getByText('Tue 3 Nov: what is left on your cards?').waitFor();
await page.screenshot({ path: `${DOCS}prompt.png` });

await page.locator('#places').getByRole('button', { name: '#quayside' }).click();
const playOn =
  "fetch('/page/play-on', { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{}' }).then((r) => r.json())";
while (!(await page.evaluate<{ done: boolean }>(playOn)).done);
await page.setViewportSize({ width: 1120, height: 1500 });
await page.locator('#stream img').last().waitFor();
// The day's heading sticks to the top and would cover the post.
await page.addStyleTag({ content: '#stream .day { position: static }' });
await page
  .locator('#stream article')
  .last()
  .screenshot({ path: `${DOCS}verdict.png` });

await browser.close();
await rehearsal.stop();
