import { describe, expect, it } from 'vitest';
import { withOpenPage } from './open-page.ts';

const open = withOpenPage();

async function form() {
  await open.send('/loadline form');
  const dialog = open.page.getByRole('dialog', { name: 'Plan a sprint' });
  await dialog.waitFor();
  return dialog;
}

describe('a form', () => {
  it('starts in its first field and shows hints, optional marks and proposed values', async () => {
    const dialog = await form();
    expect(
      await dialog.getByLabel('Sprint name').evaluate((node) => node === node.ownerDocument.activeElement),
    ).toBe(true);
    expect(await dialog.getByText('Short, so that it fits a heading.').isVisible()).toBe(true);
    expect(await dialog.locator('[data-block=left] .label').textContent()).toBe('Points left (optional)');
    expect(await dialog.locator('[data-block=name] .label').textContent()).toBe('Sprint name');
    expect(await dialog.getByLabel('First day').inputValue()).toBe('2026-11-02');
    expect(await dialog.getByLabel('Closes at').inputValue()).toBe('09:15');
    expect(await dialog.getByRole('checkbox', { name: 'Monday' }).isChecked()).toBe(true);
    const sizes = dialog.getByRole('combobox', { name: 'Largest size' }).locator('option');
    expect(await sizes.allInnerTexts()).toEqual(['Choose …', '1 point', '2 points', '3 points']);
  });

  it('that the app refuses keeps everything, names the field, and is taken once it is right', async () => {
    const dialog = await form();
    const cards = dialog.getByLabel('Cards');
    await dialog.getByLabel('Sprint name').fill('Lamps');
    await cards.fill('Buoy lamp');
    await dialog.getByLabel('Points left').fill('2.5');
    await dialog.getByLabel('Largest size').selectOption('3');
    await dialog.locator('[data-block=why] summary').click();
    await dialog.getByRole('checkbox', { name: 'Estimate drift' }).check();
    await dialog.getByRole('checkbox', { name: 'Tuesday' }).check();
    await dialog.locator('[data-block=crew] summary').click();
    await dialog.getByRole('checkbox', { name: 'Bo' }).check();
    await dialog.getByRole('button', { name: 'Commit' }).click();

    const error = dialog.getByText('Line 1 has no estimate.');
    await error.waitFor();
    expect(await cards.getAttribute('aria-describedby')).toBe(await error.getAttribute('id'));
    expect(await cards.getAttribute('aria-invalid')).toBe('true');
    expect(await dialog.getByLabel('Sprint name').inputValue()).toBe('Lamps');
    expect(await cards.inputValue()).toBe('Buoy lamp');
    expect(await dialog.getByLabel('Points left').inputValue()).toBe('2.5');
    expect(await dialog.getByLabel('Largest size').inputValue()).toBe('3');
    expect(await dialog.locator('[data-block=why] summary').textContent()).toBe('Estimate drift');
    expect(await dialog.getByRole('checkbox', { name: 'Tuesday' }).isChecked()).toBe(true);
    expect(await dialog.locator('[data-block=crew] summary').textContent()).toBe('Bo');

    await cards.fill('Buoy lamp, 3');
    await dialog.getByRole('button', { name: 'Commit' }).click();
    await dialog.waitFor({ state: 'hidden' });
    expect(open.app.heard.at(-1)).toMatchObject({
      name: { text: { value: 'Lamps' } },
      cards: { text: { value: 'Buoy lamp, 3' } },
      left: { number: { value: '2.5' } },
      size: { choice: { selected_option: { value: '3' } } },
      crew: { people: { selected_users: ['U0BO00000'] } },
      why: { choice: { selected_options: [{ value: 'drift' }] } },
      days: { choice: { selected_options: [{ value: 'mon' }, { value: 'tue' }] } },
    });
  });

  it('with an empty required field is held back by the workspace, which says so at the field', async () => {
    const dialog = await form();
    await dialog.getByRole('button', { name: 'Commit' }).click();
    await dialog.locator('[data-block=cards] .error').waitFor();
    expect(
      await dialog
        .locator('.wrong')
        .evaluateAll((nodes) => nodes.map((node) => node.getAttribute('data-block'))),
    ).toEqual(['name', 'cards']);
    expect(
      await dialog.getByLabel('Sprint name').evaluate((node) => node === node.ownerDocument.activeElement),
    ).toBe(true);
    expect(open.app.heard).toEqual([]);
  });

  it('that the app changes while open keeps what was typed', async () => {
    const dialog = await form();
    await dialog.getByLabel('Sprint name').fill('Lamps');
    await dialog.getByLabel('Cards').fill('one more field');
    await dialog.getByRole('button', { name: 'Commit' }).click();
    await dialog.getByLabel('Note').waitFor();
    expect(await dialog.getByLabel('Sprint name').inputValue()).toBe('Lamps');
  });

  it('that asks for more leads to the field that is new', async () => {
    const dialog = await form();
    await dialog.getByLabel('Sprint name').fill('Lamps');
    await dialog.getByLabel('Cards').fill('one more field');
    await dialog.getByRole('button', { name: 'Commit' }).click();
    const note = dialog.getByLabel('Note');
    await note.waitFor();
    await expect.poll(() => note.evaluate((node) => node === node.ownerDocument.activeElement)).toBe(true);
  });

  it('laid on another goes away by Escape and gives the first one back as it was', async () => {
    const dialog = await form();
    await dialog.getByLabel('Sprint name').fill('Lamps');
    await dialog.getByLabel('Cards').fill('one more form');
    await dialog.getByRole('button', { name: 'Commit' }).click();
    const second = open.page.getByRole('dialog', { name: 'One more form' });
    await second.waitFor();
    await open.page.keyboard.press('Escape');
    await dialog.waitFor();
    expect(await dialog.getByLabel('Sprint name').inputValue()).toBe('Lamps');
    await open.page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
    expect(open.app.standIn.viewOf('U0ANA0000')).toBeUndefined();
  });

  it('holds the focus: Tab never reaches the page behind it', async () => {
    await form();
    for (let press = 0; press < 40; press += 1) {
      await open.page.keyboard.press('Tab');
      const isOutside = await open.page.locator('body').evaluate((body) => {
        const { activeElement } = body.ownerDocument;
        return activeElement !== body && activeElement?.closest('dialog') === null;
      });
      expect(isOutside).toBe(false);
    }
  });
});
