import type { Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { withOpenPage } from './open-page.ts';

const open = withOpenPage();
const member = (name: RegExp) => open.page.locator('#members').getByRole('button', { name });
const place = (name: RegExp) => open.page.locator('#places').getByRole('button', { name });

describe('being another member', () => {
  it('shows what that member sees, and not what only the first one saw', async () => {
    await open.send('/loadline nonsense');
    const secret = open.page.getByText('I don’t know “nonsense”.', { exact: true });
    await secret.first().waitFor();
    expect(await open.page.locator('article').textContent()).toContain('only you see this');
    await member(/Bo/).click();
    await open.page.getByText('seen by Bo').waitFor();
    expect(await open.page.locator('article').count()).toBe(0);
  });

  it('is suggested by a mark beside the name when something waits there', async () => {
    await open.send('/loadline direct');
    await member(/Bo\s*1 new/).click();
    await place(/Direct messages\s*1 new/).click();
    await open.page.locator('article').getByText('Good morning, Bo.').waitFor();
    await member(/Ana/).click();
    await open.page.getByText('seen by Ana').waitFor();
    expect(await open.page.locator('#place-title').textContent()).toBe('Direct messages');
    expect(await open.page.locator('article').count()).toBe(0);
    await member(/^Bo$/).waitFor();
  });

  it('lasts over a reload, as the address names member and place', async () => {
    await member(/Bo/).click();
    await place(/Direct messages/).click();
    await open.page.reload();
    await open.page.getByText('seen by Bo').waitFor();
    expect(await open.page.locator('#place-title').textContent()).toBe('Direct messages');
  });

  it('starts as somebody who exists when the address names nobody here', async () => {
    await open.goTo('#as=U0GONE');
    expect(await member(/Ana/).getAttribute('aria-pressed')).toBe('true');
  });

  it('shows the Home page that the app draws for each', async () => {
    await place(/Home page/).click();
    await open.page.getByText('Home of @Ana').waitFor();
    await member(/Bo/).click();
    await open.page.getByText('Home of @Bo').waitFor();
  });
});

describe('a message that arrives', () => {
  it('leaves the typed text, its caret and the focus alone, and is announced to a screen reader', async () => {
    const box = open.page.locator('#composer-box');
    await box.fill('half a thought');
    await box.evaluate((node) => node.setSelectionRange(4, 4));
    await open.app.standIn.say('U0BO00000', 'C0HARBOUR', 'Good morning');
    await open.page
      .locator('#spoken')
      .getByText('Bo in #harbour: Good morning')
      .waitFor({ state: 'attached' });
    await open.page.locator('article').getByText('Good morning').waitFor();
    expect(await box.inputValue()).toBe('half a thought');
    expect(await box.evaluate((node) => node.selectionStart)).toBe(4);
    expect(await box.evaluate((node) => node === node.ownerDocument.activeElement)).toBe(true);
  });

  it('does not move a reader who has scrolled up, but says that there is more below', async () => {
    for (let line = 0; line < 20; line += 1)
      await open.app.standIn.say('U0BO00000', 'C0HARBOUR', `line ${line}`);
    await open.page.locator('article').getByText('line 19').waitFor();
    const stream = open.page.locator('#stream');
    await stream.evaluate((node) => {
      // A busy browser may hold back its word of the scroll until after the message.
      node.ownerDocument.addEventListener('scroll', (event: Event) => event.stopImmediatePropagation(), true);
      node.scrollTop = 0;
    });
    await open.app.standIn.say('U0BO00000', 'C0HARBOUR', 'A late word');
    await open.page.getByRole('button', { name: 'New messages below' }).click();
    expect(
      await stream.evaluate((node) => node.scrollHeight - node.scrollTop - node.clientHeight),
    ).toBeLessThan(2);
  });

  it('is scrolled to when the reader was at the end', async () => {
    for (let line = 0; line < 20; line += 1)
      await open.app.standIn.say('U0BO00000', 'C0HARBOUR', `line ${line}`);
    await open.page.locator('article').getByText('line 19').waitFor();
    const stream = open.page.locator('#stream');
    expect(await stream.evaluate((node) => node.scrollHeight > node.clientHeight)).toBe(true);
    expect(
      await stream.evaluate((node) => node.scrollHeight - node.scrollTop - node.clientHeight),
    ).toBeLessThan(2);
  });

  it('stays the newest when the window changes or the page is zoomed', async () => {
    for (let line = 0; line < 20; line += 1)
      await open.app.standIn.say('U0BO00000', 'C0HARBOUR', `line ${line}: ${'a long line '.repeat(12)}`);
    const newest = open.page.locator('article').last();
    await newest.getByText('line 19').waitFor();
    await open.page.setViewportSize({ width: 390, height: 500 });
    await expect.poll(() => isSeenWhole(newest)).toBe(true);
  });

  it('is shown from its words on when its picture comes as a message of its own', async () => {
    await open.page.setViewportSize({ width: 1280, height: 420 });
    for (let line = 0; line < 20; line += 1)
      await open.app.standIn.say('U0BO00000', 'C0HARBOUR', `line ${line}`);
    await open.send('/loadline words and picture');
    await open.page.locator('#stream img').evaluate((node) => node.decode());
    const words = open.page.locator('article').getByText('Six days, 8.5 points left.');
    await expect.poll(() => isSeenWhole(words)).toBe(true);
  });
});

describe('the message box', () => {
  it('keeps a command that was not taken and says why', async () => {
    await open.send('/nothing at all');
    await open.page.getByRole('alert').getByText('/nothing').waitFor();
    expect(await open.page.locator('#composer-box').inputValue()).toBe('/nothing at all');
  });

  it('keeps a draft for each member and place', async () => {
    const box = open.page.locator('#composer-box');
    await box.fill('for the channel');
    await place(/Direct messages/).click();
    expect(await box.inputValue()).toBe('');
    await place(/#harbour/).click();
    expect(await box.inputValue()).toBe('for the channel');
  });
});

it('a narrow screen is never pushed sideways', async () => {
  await open.page.setViewportSize({ width: 390, height: 844 });
  await open.send('/loadline blocks');
  await open.page.locator('article').getByRole('img').waitFor();
  expect(await open.page.locator('html').evaluate((node) => node.scrollWidth)).toBe(390);
});

/** Whether a part of the log is seen as a whole, below the day's heading that stays at its top. */
function isSeenWhole(part: Locator): Promise<boolean> {
  return part.evaluate((node) => {
    const log = node.closest('#stream');
    const day = log?.querySelector('.day')?.getBoundingClientRect().height ?? 0;
    const box = log?.getBoundingClientRect();
    const { top, bottom } = node.getBoundingClientRect();
    return box !== undefined && top >= box.top + day - 1 && bottom <= box.bottom + 1;
  });
}
