import { describe, expect, test } from 'vitest';
import { daysOffForm, saveDaysOff } from '../../../src/app/days-off/days-off-form.ts';
import { sayDaysOff } from '../../../src/app/days-off/say-days-off.ts';
import { sayWeekdays } from '../../../src/app/days-off/say-weekdays.ts';
import type { Team } from '../../../src/app/team/team.ts';
import { daysFromTo } from '../../../src/sprint/calendar.ts';
import { daysOffSaidSentence, daysOffSavedSentence } from '../../../src/words/days-off.ts';
import { actorOf, CHANNEL, type Harness, harnessForEach } from '../../support/app-harness.ts';

// Monday 2 to Friday 13 November 2026, in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-11-02T08:00:00Z');
const ana = actorOf('ana');
const ben = actorOf('ben');
const HERE = CHANNEL;

async function running(h: Harness): Promise<Team> {
  const team = await h.setUpTeam();
  await h.plan(team, {
    startsOn: '2026-11-02',
    endsOn: '2026-11-13',
    cards: 'Buoy, 3, @Ben\nCrane, 5, @Chi',
  });
  return team;
}

const off = (h: Harness, actor: typeof ana, words: string) =>
  sayDaysOff(h.deps, actor, { place: HERE, words });

/** Days of the month on which the person was asked or told. */
function promptDays(h: Harness, userId: 'ben' | 'chi'): number[] {
  return h
    .messagesTo(userId)
    .flatMap((content) => (content.kind === 'daily-prompt' ? [Number(content.prompt.day.slice(8))] : []));
}

/** A missed day is not asked about afterwards, so each noon is passed. */
async function passUntil(h: Harness, last: string): Promise<void> {
  for (const day of daysFromTo('2026-11-02', last)) await h.pass(`${day}T12:00:00Z`);
}

describe('days off', () => {
  test('nobody is asked on one, and everybody on half a one', async () => {
    const h = harness();
    await running(h);
    await off(h, ben, '4 Nov to 5 Nov');
    await off(h, ben, '6 Nov half');
    await off(h, ana, 'team 9 Nov');
    await passUntil(h, '2026-11-10');
    expect(promptDays(h, 'ben')).toEqual([2, 3, 6, 10]);
    expect(promptDays(h, 'chi')).toEqual([2, 3, 4, 5, 6, 10]);
  });

  test('yesterday may be called by its date: it is this year’s', async () => {
    const h = harness();
    await running(h);
    await passUntil(h, '2026-11-04');
    const yesterday = [{ from: '2026-11-03', to: '2026-11-03' }];
    expect((await off(h, ana, 'team 3 Nov')).spans).toEqual(yesterday);
    expect((await off(h, ben, '3 Nov')).spans).toEqual(yesterday);
    const saidOfTeam = daysOffSaidSentence(await off(h, ana, 'team 30 Oct'));
    expect(saidOfTeam).toContain('is off 30 October 2027.');
  });

  test('a list that is cut short says how many more there are', async () => {
    const h = harness();
    const team = await running(h);
    const days = [9, 11, 13, 16, 18, 20, 23, 25].map((day) => `${day} Nov`);
    await off(h, ana, `team ${days.join(', ')}`);
    const form = await daysOffForm(h.deps, ben, HERE);
    expect(daysOffSavedSentence({ ...form, team })).toMatch(/Wed 18 Nov, Fri 20 Nov and 2 more\.$/);
  });

  test('a day taken back is asked about again', async () => {
    const h = harness();
    const team = await running(h);
    await off(h, ben, '4 Nov to 6 Nov');
    const span = { from: '2026-11-04', to: '2026-11-06' };
    expect((await daysOffForm(h.deps, ben, HERE)).own).toEqual([{ ...span, isHalf: false }]);
    const saved = await saveDaysOff(h.deps, ben, {
      teamId: team.id,
      whose: 'own',
      from: '2026-11-05',
      to: '',
      isHalf: true,
      takeBack: [{ whose: 'own', span }],
      weekdays: [1, 2, 3, 4],
    });
    expect(saved.own).toEqual([{ from: '2026-11-05', to: '2026-11-05', isHalf: true }]);
    expect(saved.weekdays).toEqual([1, 2, 3, 4]);
    await passUntil(h, '2026-11-06');
    expect(promptDays(h, 'ben')).toEqual([2, 3, 4, 5]);
  });

  test('one said today, after the question, is taken for away: nobody is reminded', async () => {
    const h = harness();
    await running(h);
    await h.pass('2026-11-03T10:00:00Z');
    await off(h, ben, 'today');
    await h.pass('2026-11-03T20:00:00Z');
    expect(h.messagesTo('ben').filter(({ kind }) => kind === 'reminder')).toEqual([]);
    expect(h.messagesTo('chi').filter(({ kind }) => kind === 'reminder')).toHaveLength(1);
  });

  test('only a facilitator says those of the team, and nobody those that are long gone', async () => {
    const h = harness();
    await running(h);
    await expect(off(h, ben, 'team 9 Nov')).rejects.toMatchObject({ code: 'not-a-facilitator' });
    await expect(off(h, ben, '2026-10-30')).rejects.toMatchObject({ code: 'bad-argument' });
    await expect(off(h, ben, '6 Nov 2026 to 5 Nov 2026')).rejects.toMatchObject({ code: 'bad-argument' });
  });

  test('a member is asked on the weekdays on which they work', async () => {
    const h = harness();
    await running(h);
    await sayWeekdays(h.deps, ben, { place: HERE, words: 'mon-wed' });
    await expect(sayWeekdays(h.deps, ben, { place: HERE, words: 'sat sun' })).rejects.toMatchObject({
      code: 'bad-argument',
    });
    await passUntil(h, '2026-11-10');
    expect(promptDays(h, 'ben')).toEqual([2, 3, 4, 9, 10]);
  });

  test('said in mid-sprint count from that day: what was asked and worked before stays', async () => {
    const h = harness();
    const team = await running(h);
    await passUntil(h, '2026-11-05');
    await sayWeekdays(h.deps, ben, { place: HERE, words: 'mon-wed' });
    for (const day of daysFromTo('2026-11-06', '2026-11-13')) await h.pass(`${day}T12:00:00Z`);
    await h.pass('2026-11-13T17:00:00Z');
    expect(promptDays(h, 'ben')).toEqual([2, 3, 4, 5, 9, 10, 11]);
    const [past] = await h.read((read) => read.pastSprintsOf(team.id));
    // Ten working days each, but for Ben, who is gone on Thursdays and Fridays from the 5th on.
    expect(past?.memberDays).toBe(3 * 10 - 4);
    const [sprint] = await h.read((read) => read.sprintsOf(team.id));
    const result = await h.read((read) => read.latestResult(sprint?.id ?? ''));
    // Ben's 3, 4, 9, 10 and 11, for the 5th is no day of his any more; Chi's nine days after the first morning.
    expect(result?.summary.answers?.prompts).toBe(5 + 9);
  });
});
