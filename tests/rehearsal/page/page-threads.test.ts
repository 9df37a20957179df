import { describe, expect, it } from 'vitest';
import { withOpenPage } from './open-page.ts';

const open = withOpenPage();
const message = (words: string) => open.page.locator('article').filter({ hasText: words });

/** By the keyboard alone, as everything on the page must be. */
async function chooseFromMenu(words: string, item: RegExp): Promise<void> {
  await message(words).locator('summary').press('Enter');
  await message(words).getByRole('button', { name: item }).press('Enter');
}

describe('the menu of a message', () => {
  it('leads to its thread, where the app is asked by a mention and answers', async () => {
    await open.send('Who knows the tides?');
    await message('Who knows the tides?').waitFor();
    await chooseFromMenu('Who knows the tides?', /^Reply in thread/);
    await open.page.getByText('Thread in').waitFor();
    await open.send('@loadline status');
    await message('You asked: status').waitFor();
    expect(await message('You asked: status').textContent()).toContain('only you see this');
    await open.page.getByRole('button', { name: 'Back to all messages' }).click();
    await message('Who knows the tides?').locator('summary').getByText('2 replies').waitFor();
    expect(await open.page.locator('article').count()).toBe(1);
  });

  it('has no slash commands in a thread, and says what to write instead', async () => {
    await open.send('Who knows the tides?');
    await chooseFromMenu('Who knows the tides?', /^Reply in thread/);
    await open.send('/loadline status');
    await open.page.locator('#notice').getByText('Commands don’t work in threads.').waitFor();
    expect(await open.page.locator('#composer-box').inputValue()).toBe('/loadline status');
  });

  it('makes a card of the message in the app’s form', async () => {
    await open.send('The tide table is wrong');
    await chooseFromMenu('The tide table is wrong', /^Pull this in as a card/);
    await open.page.locator('#form-dialog').getByText('A card of: The tide table is wrong').waitFor();
  });

  it('is missing on what one person alone sees', async () => {
    await open.send('/loadline nonsense');
    await message('only you see this').waitFor();
    expect(await message('only you see this').locator('summary').count()).toBe(0);
  });
});

describe('a mention in a channel', () => {
  it('is answered there, seen by the person who asked', async () => {
    await open.send('@loadline cards');
    await message('You asked: cards').waitFor();
    await open.page.locator('#members').getByRole('button', { name: /Bo/ }).click();
    await open.page.getByText('seen by Bo').waitFor();
    expect(await open.page.locator('article').count()).toBe(1);
  });
});
