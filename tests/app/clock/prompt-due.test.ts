import { expect, it } from 'vitest';
import { promptInstant } from '../../../src/app/clock/prompt-time.ts';
import { aTeam } from '../../store/store-examples.ts';
import { harnessForEach } from '../../support/app-harness.ts';

// The sprint runs from Monday 2 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');

// IANA tz 2025c: on 2026-11-01 New York goes back to UTC−5 at 06:00Z.
it.each([
  ['2026-10-30', '2026-10-30T13:15:00.000Z'],
  ['2026-11-02', '2026-11-02T14:15:00.000Z'],
])('a prompt is due by the team’s own clock: %s', (day, dueAt) => {
  const team = aTeam({ promptAt: '09:15', timeZone: 'America/New_York' });
  expect(promptInstant(team, undefined, day).toISOString()).toBe(dueAt);
});

it('a prompt that is posted knows when it was due', async () => {
  const h = harness();
  await h.plan(await h.setUpTeam());
  await h.pass('2026-11-02T09:15:00Z');
  const [posted] = h.messagesTo('ben').filter(({ kind }) => kind === 'daily-prompt');
  expect(posted).toMatchObject({ prompt: { dueAt: new Date('2026-11-02T09:15:00Z') } });
});
