import { describe, expect, test } from 'vitest';
import { recordUnchanged } from '../../../src/app/answering/record-answers.ts';
import { sprintHabits } from '../../../src/app/closing/sprint-habits.ts';
import { chooseOwnPrompt, ownPromptForm } from '../../../src/app/team/own-prompt.ts';
import { openHomePage } from '../../../src/app/watching/home-page.ts';
import {
  actorOf,
  harnessForEach,
  type PersonName,
  problemsOf,
  refusalOf,
} from '../../support/app-harness.ts';

// Friday noon before the sprint of Monday 2 to Friday 13 November 2026; Lisbon is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ben = actorOf('ben');

/** Ben and Chi have open cards; the team is asked at 09:15, reminded after three hours, and closes at 17:00. */
async function planned(own: { at: string; timeZone: string } | undefined, who: PersonName = 'ben') {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team);
  if (own) await chooseOwnPrompt(h.deps, actorOf(who), own);
  await h.drain();
  return { h, team, sprint };
}

const LISBON = 'Europe/Lisbon';
const kinds = (h: ReturnType<typeof harness>) => [h.kindsTo('ben'), h.kindsTo('chi')];

describe('a member’s own time of being asked', () => {
  test('asks them at their time, and the others at the team’s', async () => {
    const { h } = await planned({ at: '10:30', timeZone: LISBON });
    await h.pass('2026-11-03T09:15:00Z');
    expect(kinds(h)).toEqual([[], ['daily-prompt']]);
    await h.pass('2026-11-03T10:29:59Z');
    expect(h.kindsTo('ben')).toEqual([]);
    await h.pass('2026-11-03T10:30:00Z');
    await h.pass('2026-11-03T10:31:00Z');
    expect(kinds(h)).toEqual([['daily-prompt'], ['daily-prompt']]);
    await h.pass('2026-11-04T09:15:00Z');
    await h.pass('2026-11-04T10:30:00Z');
    expect(kinds(h).map((sent) => sent.filter((kind) => kind === 'daily-prompt').length)).toEqual([2, 2]);
  });

  test('may come before the team’s, and follows the clock where they are', async () => {
    // Kolkata is five and a half hours ahead.
    const { h, sprint } = await planned({ at: '09:30', timeZone: 'Asia/Kolkata' });
    await h.pass('2026-11-03T04:00:00Z');
    expect(kinds(h)).toEqual([['daily-prompt'], []]);
    await recordUnchanged(h.deps, ben, { sprintId: sprint.id, day: '2026-11-03' });
    await h.pass('2026-11-03T09:15:00Z');
    expect(kinds(h)).toEqual([['daily-prompt'], ['daily-prompt']]);
  });

  test('is on the team’s day, even if it is another date where they are', async () => {
    // 08:00 on Wednesday in Auckland (UTC+13) is 19:00 on Tuesday in Lisbon: too late; 20:00 on Tuesday there is 07:00.
    const { h, team } = await planned({ at: '20:00', timeZone: 'Pacific/Auckland' });
    await h.pass('2026-11-03T07:00:00Z');
    expect(h.messagesTo('ben')).toMatchObject([{ kind: 'daily-prompt', prompt: { day: '2026-11-03' } }]);
    const late = chooseOwnPrompt(h.deps, ben, { at: '08:00', timeZone: 'Pacific/Auckland' });
    expect(await problemsOf(late)).toEqual({
      at: `Choose a time on ${team.name}’s working day, 16:00 (${LISBON}) at the latest.`,
    });
  });

  test('reminds as long after it as after the team’s, each once', async () => {
    const { h } = await planned({ at: '10:30', timeZone: LISBON });
    for (const time of ['09:15', '10:30', '12:15', '13:29']) await h.pass(`2026-11-03T${time}:00Z`);
    expect(kinds(h)).toEqual([['daily-prompt'], ['daily-prompt', 'reminder']]);
    for (const time of ['13:30', '15:00']) await h.pass(`2026-11-03T${time}:00Z`);
    expect(kinds(h)).toEqual([
      ['daily-prompt', 'reminder'],
      ['daily-prompt', 'reminder'],
    ]);
  });

  test('only lists the cards on the first day when it is before noon where the team is', async () => {
    // 18:00 in Kolkata is 12:30 in Lisbon.
    const { h, team, sprint } = await planned({ at: '18:00', timeZone: 'Asia/Kolkata' });
    for (const time of ['09:15', '12:30', '15:30']) await h.pass(`2026-11-02T${time}:00Z`);
    const states = (who: PersonName) =>
      h.messagesTo(who).map((sent) => 'prompt' in sent && [sent.kind, sent.prompt.state]);
    expect(states('chi')).toEqual([['daily-prompt', 'listed']]);
    expect(states('ben')).toEqual([
      ['daily-prompt', 'asked'],
      ['reminder', 'asked'],
    ]);
    await recordUnchanged(h.deps, ben, { sprintId: sprint.id, day: '2026-11-02' });
    const habits = await h.read(async (read) =>
      sprintHabits(read, team, sprint, await read.recordsOf(sprint.id)),
    );
    expect(habits.answers).toEqual({ prompts: 1, met: 1 });
  });

  test('at the very time of the last call takes the last call from nobody else', async () => {
    const { h } = await planned({ at: '16:00', timeZone: LISBON });
    await h.pass('2026-11-13T09:15:00Z');
    await h.pass('2026-11-13T16:00:00Z');
    expect(h.kindsTo('chi')).toContain('last-call');
    expect(h.kindsTo('ben')).toEqual(['daily-prompt']);
  });

  test('holds at once when it is changed: nobody is asked twice on a day, and nobody is left out', async () => {
    const { h } = await planned({ at: '11:00', timeZone: LISBON });
    await h.pass('2026-11-03T09:15:00Z');
    await h.pass('2026-11-03T09:30:00Z');
    await chooseOwnPrompt(h.deps, ben, { at: '', timeZone: '' });
    await h.pass('2026-11-03T09:31:00Z');
    expect(h.kindsTo('ben')).toEqual(['daily-prompt']);
    await chooseOwnPrompt(h.deps, ben, { at: '14:00', timeZone: LISBON });
    await h.pass('2026-11-03T14:00:00Z');
    await h.pass('2026-11-04T09:15:00Z');
    expect(h.kindsTo('ben').filter((kind) => kind === 'daily-prompt')).toHaveLength(1);
    await h.pass('2026-11-04T14:00:00Z');
    expect(h.kindsTo('ben').filter((kind) => kind === 'daily-prompt')).toHaveLength(2);
  });

  test('is kept when a facilitator changes the team, and those asked already are not asked again', async () => {
    const { h } = await planned({ at: '10:30', timeZone: LISBON });
    await h.pass('2026-11-03T09:15:00Z');
    await h.setUpTeam({ promptAt: '09:00' });
    await h.pass('2026-11-03T10:30:00Z');
    // To set the team up makes the harness forget what was sent before.
    expect(kinds(h)).toEqual([['daily-prompt'], []]);
  });

  test('shows on the home page, and in the form with the zone of the person’s profile to begin with', async () => {
    const { h } = await planned(undefined);
    expect(await ownPromptForm(h.deps, ben)).toMatchObject({ ownPrompt: undefined, timeZone: LISBON });
    const set = await chooseOwnPrompt(h.deps, ben, { at: '8.30', timeZone: '' });
    expect(set.ownPrompt).toEqual({ at: '08:30', timeZone: LISBON });
    const [team] = (await openHomePage(h.deps, ben)).teams;
    expect(team?.nextQuestionAt).toEqual(new Date('2026-11-02T08:30:00Z'));
  });

  test('must be a time in a zone, of somebody who works on a team', async () => {
    const { h } = await planned(undefined);
    const choose = (at: string, timeZone: string) => chooseOwnPrompt(h.deps, ben, { at, timeZone });
    expect(await problemsOf(choose('soon', LISBON))).toHaveProperty('at');
    expect(await problemsOf(choose('10:30', 'Lisbon'))).toHaveProperty('timeZone');
    const stranger = chooseOwnPrompt(h.deps, actorOf('dayo'), { at: '10:30', timeZone: LISBON });
    await refusalOf(stranger, 'no-team-of-yours');
  });
});

test('the reminder and the last call are brought up to date when the answer comes elsewhere', async () => {
  const { h, sprint } = await planned(undefined);
  await h.pass('2026-11-13T09:15:00Z');
  await h.pass('2026-11-13T12:15:00Z');
  await h.pass('2026-11-13T16:00:00Z');
  expect(h.kindsTo('ben')).toEqual(['daily-prompt', 'reminder', 'last-call']);
  await recordUnchanged(h.deps, ben, { sprintId: sprint.id, day: '2026-11-13' });
  await h.drain();
  expect(h.messagesTo('ben')).toMatchObject([
    { kind: 'daily-prompt', prompt: { state: 'unchanged' } },
    { kind: 'reminder', prompt: { state: 'unchanged' } },
    { kind: 'last-call', prompt: { state: 'unchanged' } },
  ]);
});
