import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { withOpenPage } from './open-page.ts';

const START = '2026-11-02T09:15:00Z';
let now = new Date(START);
let asked: unknown[] = [];

const open = withOpenPage({
  now: () => now,
  routes: {
    'GET /page/about': () => ({
      teamName: 'Harbour crew',
      scenario: 'Lamps and buoys',
      hint: 'Play a step.\nBe somebody else.\nMove the calendar on.',
      timeZone: 'America/New_York',
      examples: ['/loadline status'],
      roles: { U0ANA0000: 'facilitator' },
    }),
    'POST /page/forward': (input) => {
      asked.push(input);
      if (input.by === 'close') throw new Error('No sprint is open, so there is no end to go to.');
      now = new Date(now.getTime() + 24 * 60 * 60 * 1000);
      return { did: 'Bo wrote. It is Tue 3 Nov, 04:15.', ...(input.by === 'hour' ? { place: 'home' } : {}) };
    },
  },
});

beforeEach(() => {
  asked = [];
});
afterEach(() => {
  now = new Date(START);
});

const button = (name: string) => open.page.getByRole('button', { name });

describe('the calendar', () => {
  it('shows the simulated time in the team’s zone and moves on by what was pressed', async () => {
    const clock = open.page.locator('#clock');
    await clock.getByText('04:15').waitFor();
    await button('Next day').click();
    await clock.getByText('Tuesday, 3 November 2026').waitFor();
    expect(asked).toEqual([{ by: 'day' }]);
  });

  it('says in words why it could not move on', async () => {
    await button('To the sprint’s end').click();
    await open.page
      .getByRole('status')
      .getByText('No sprint is open, so there is no end to go to.')
      .waitFor();
    expect(await button('To the sprint’s end').isEnabled()).toBe(true);
  });

  it('says what happened meanwhile', async () => {
    await button('Next day').click();
    await open.page.getByRole('status').getByText('Bo wrote. It is Tue 3 Nov, 04:15.').waitFor();
  });

  it('shows the place where something came in that one should see', async () => {
    await button('+1 hour').click();
    await open.page.getByRole('heading', { name: 'Home page' }).waitFor();
  });
});

describe('what to try', () => {
  it('is shown at the first visit, and not again once it was closed', async () => {
    const lines = open.page.locator('#hint-lines li');
    await lines.first().waitFor();
    expect(await lines.allInnerTexts()).toEqual([
      'Play a step.',
      'Be somebody else.',
      'Move the calendar on.',
    ]);
    await button('Got it').click();
    await open.page.reload();
    await open.page.locator('#clock').getByText('04:15').waitFor();
    expect(await lines.first().isVisible()).toBe(false);
    await button('What to try').click();
    expect(await lines.first().isVisible()).toBe(true);
  });

  it('has examples that are put into the message box, not sent', async () => {
    await button('/loadline status').click();
    expect(await open.page.locator('#composer-box').inputValue()).toBe('/loadline status');
    expect(await open.page.locator('article').count()).toBe(0);
  });
});

it('a member’s part in the team is beside the name', async () => {
  await open.page
    .locator('#members')
    .getByRole('button', { name: /Ana\s*facilitator/ })
    .waitFor();
});
