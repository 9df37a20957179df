import { describe, expect, it } from 'vitest';
import { withOpenPage } from './open-page.ts';
import { HOSTILE_TEXT } from './sample-app.ts';

const open = withOpenPage();

async function everyBlock() {
  await open.send('/loadline blocks');
  const entry = open.page.locator('article');
  await entry.getByRole('img').waitFor();
  return entry;
}

describe('a message with one of each block', () => {
  it('shows header, text with marks, fields, context and divider', async () => {
    const entry = await everyBlock();
    expect(await entry.getByRole('heading').textContent()).toBe('What is left on your cards?');
    expect(await entry.locator('strong').first().textContent()).toBe('Buoy lamp');
    expect(await entry.locator('em').first().textContent()).toBe('2 points');
    expect(await entry.locator('s').textContent()).toBe('3 before');
    expect(await entry.locator('code').textContent()).toBe('LP-1');
    expect(await entry.getByRole('link', { name: 'the drawing' }).getAttribute('href')).toBe(
      'https://example.org/buoy',
    );
    expect(await entry.locator('.section .mention').textContent()).toBe('@Bo');
    expect(await entry.locator('ul.bullets li').allInnerTexts()).toEqual(['new lens', 'new battery']);
    expect(await entry.locator('blockquote').textContent()).toBe('as agreed on Monday');
    expect(await entry.locator('.fields > div').allInnerTexts()).toEqual([
      expect.stringMatching(/^Commitment\s21 points$/),
      expect.stringMatching(/^Left\s8\.5 points$/),
    ]);
    expect(await entry.locator('.context').textContent()).toBe('Answer until 17:00, in #harbour.');
    expect(await entry.locator('hr').count()).toBe(1);
  });

  it('shows the picture, and its words on demand', async () => {
    const entry = await everyBlock();
    const picture = entry.getByRole('img');
    await picture.evaluate((node) => node.decode());
    expect(await picture.evaluate((node) => node.naturalWidth)).toBe(320);
    const words = entry.getByText('Burndown: 21 points at the start, 8.5 left after six days.');
    expect(await words.isVisible()).toBe(false);
    await entry.getByText('The image in words').click();
    expect(await words.isVisible()).toBe(true);
  });

  it('can be read as a screen reader gets it: the text, then the picture in words', async () => {
    const entry = await everyBlock();
    await open.page.getByRole('button', { name: 'Read as text' }).click();
    expect(await entry.locator('.plain').allInnerTexts()).toEqual([
      'What is left on your cards? In words.',
      'Image: Burndown: 21 points at the start, 8.5 left after six days.',
    ]);
    expect(await entry.getByRole('button').count()).toBe(0);
  });
});

describe('what is pressed', () => {
  it('reaches the app with its value, and the updated message says so', async () => {
    const entry = await everyBlock();
    await entry.getByRole('button', { name: 'Nothing changed' }).click();
    await entry.getByText('Noted: same.').waitFor();
    expect(await entry.locator('.head').textContent()).toMatch(/updated 09:15/);
    expect(open.app.heard).toMatchObject([{ action_id: 'same', value: 'same', block_id: 'answer' }]);
  });

  it('is asked about first where the app wants it: “leave it” sends nothing, “cancel it” does', async () => {
    const entry = await everyBlock();
    const question = open.page.getByRole('dialog', { name: 'Cancel the sprint?' });
    await entry.getByRole('button', { name: 'Cancel the sprint' }).click();
    await question.getByRole('button', { name: 'Leave it' }).click();
    await question.waitFor({ state: 'hidden' });
    expect(open.app.heard).toEqual([]);
    await entry.getByRole('button', { name: 'Cancel the sprint' }).click();
    await question.getByRole('button', { name: 'Cancel it' }).click();
    await entry.getByText('Noted:').waitFor();
    expect(open.app.heard).toMatchObject([{ action_id: 'cancel' }]);
  });
});

describe('hostile text', () => {
  it('stays text in a message: no element, no script, no link comes out of it', async () => {
    await open.send('/loadline hostile');
    const entry = open.page.locator('article');
    await entry.getByText('and me').waitFor();
    expect(await entry.locator('.prose').allInnerTexts()).toEqual([HOSTILE_TEXT]);
    expect(await entry.locator('img, script, a').count()).toBe(0);
    expect(await open.page.evaluate('window.broken')).toBeUndefined();
  });

  it('typed by a member stays text as well', async () => {
    const typed = '<img src=x onerror="window.broken=4"><a href="javascript:window.broken=5">x</a>';
    await open.send(typed);
    await open.page.locator('article').waitFor();
    expect(await open.page.locator('article .prose').textContent()).toBe(typed);
    expect(await open.page.locator('article img, article a').count()).toBe(0);
    expect(await open.page.evaluate('window.broken')).toBeUndefined();
  });
});
