/** Takes the README's pictures from the rehearsal page: `npm run pictures`. */
import { readFile } from 'node:fs/promises';
import { createLogger } from '../../src/logger.ts';
import { FACILITATOR_ID } from '../../src/rehearsal/cast.ts';
import { openPage } from '../../src/rehearsal/open-page.ts';
import { readScenario } from '../../src/rehearsal/scenario.ts';
import { launchBrowser } from '../support/browser.ts';

const SCENARIO = new URL('../../src/rehearsal/scenarios/kept.json', import.meta.url);
const PAST_SPRINTS = new URL('../../src/rehearsal/page/examples/past-sprints.csv', import.meta.url);
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
// The whole sprint is played on the way.
page.setDefaultTimeout(120_000);
const press = (name: string) => page.getByRole('button', { name, exact: true }).last().click();

await page.goto(`${rehearsal.standIn.url}/`);
await press('Got it');
await page.locator('#members').getByRole('button', { name: 'Odd' }).click();
await page.locator('#places').getByRole('button', { name: 'Direct messages' }).click();
await page.getByText('Tue 3 Nov: what is left on your cards?').waitFor();
await page.screenshot({ path: `${DOCS}prompt.png` });

await press('To the sprint’s end');
await page
  .locator('#stream')
  .getByText(/^Harbour 12: kept/)
  .waitFor();
await page.setViewportSize({ width: 1120, height: 1800 });
await page.locator('#stream img').last().waitFor();
// The day's heading sticks to the top and would cover the post.
await page.addStyleTag({ content: '#stream .day { position: static }' });
await page
  .locator('#stream article')
  .last()
  .screenshot({ path: `${DOCS}verdict.png` });

// At the next planning, with invented sprints of before brought in.
const { conversation } = rehearsal;
await conversation.formAfter(FACILITATOR_ID, () => conversation.command(FACILITATOR_ID, 'import'));
await conversation.submit(FACILITATOR_ID, { text: await readFile(PAST_SPRINTS, 'utf8') });
await conversation.submit(FACILITATOR_ID, {});
await page.locator('#members button').first().click();
await page.locator('#places').getByRole('button', { name: '#quayside' }).click();
await page.locator('#composer-box').fill('/loadline range');
await page.locator('#composer-box').press('Enter');
await page.getByRole('button', { name: 'Other points or days away' }).waitFor();
await page.locator('#stream img[alt^="Commitment range"]').last().waitFor();
await page
  .locator('#stream article')
  .last()
  .screenshot({ path: `${DOCS}range.png` });

await browser.close();
await rehearsal.stop();
