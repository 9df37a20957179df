import { expect, test } from 'vitest';
import { sayDaysOff } from '../../../src/app/days-off/say-days-off.ts';
import { sayWeekdays } from '../../../src/app/days-off/say-weekdays.ts';
import { planTime } from '../../../src/app/planning/plan-time.ts';
import { actorOf, CHANNEL, harnessForEach, PEOPLE } from '../../support/app-harness.ts';

const harness = harnessForEach('2026-10-30T12:00:00Z');

test('a plan knows who is off when, who works part-time, and how many member-days remain', async () => {
  const h = harness();
  const { id } = await h.setUpTeam();
  await sayDaysOff(h.deps, actorOf('ben'), { place: CHANNEL, words: '3 Nov to 4 Nov' });
  await sayDaysOff(h.deps, actorOf('ben'), { place: CHANNEL, words: '5 Nov half' });
  await sayDaysOff(h.deps, actorOf('ana'), { place: CHANNEL, words: 'team 6 Nov' });
  await sayWeekdays(h.deps, actorOf('chi'), { place: CHANNEL, words: 'mon-tue' });
  const time = await h.deps.store.read(async (read) => {
    const team = await read.teamById(id);
    if (!team) throw new Error('the team is set up');
    return planTime(team, await read.membersOf(id), { startsOn: '2026-11-02', endsOn: '2026-11-06' });
  });
  expect(time.teamOff).toEqual([{ from: '2026-11-06', to: '2026-11-06', isHalf: false }]);
  expect(time.people).toEqual([
    {
      userId: PEOPLE.ben,
      off: [
        { from: '2026-11-03', to: '2026-11-04', isHalf: false },
        { from: '2026-11-05', to: '2026-11-05', isHalf: true },
      ],
      worksOn: undefined,
    },
    { userId: PEOPLE.chi, off: [], worksOn: [1, 2] },
  ]);
  const ofBen = 1.5;
  const ofChi = 2;
  const ofAna = 4;
  expect(time).toMatchObject({ namedDays: 0, memberDays: ofAna + ofBen + ofChi });
});
