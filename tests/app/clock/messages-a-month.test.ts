/** How many messages members get in a month of two sprints: at most one a working day, a reminder and a last call, on two teams as well. */
import { expect, test } from 'vitest';
import { harnessForEach, type PersonName } from '../../support/app-harness.ts';

// Lisbon is on UTC in November (IANA tz 2025c). Sprints from Monday 2 to Friday 13 and from Monday 16 to Friday 27.
const harness = harnessForEach('2026-10-30T12:00:00Z');

const SPRINTS = [
  { name: 'Harbour 12', startsOn: '2026-11-02', endsOn: '2026-11-13' },
  { name: 'Harbour 13', startsOn: '2026-11-16', endsOn: '2026-11-27' },
];
const CARDS = 'Tide table, 5, @Ben\nCrane log, 3, @Chi\nPilot roster, 2, @Ben @Chi';

/** Plays the month: Ben answers every question at ten, Chi never does. @returns kinds of messages by member and day */
async function month(): Promise<Map<string, string[]>> {
  const h = harness();
  const team = await h.setUpTeam();
  const got = new Map<string, string[]>();
  for (const plan of SPRINTS) {
    const { sprint } = await h.plan(team, { ...plan, cards: CARDS });
    for (let date = Number(plan.startsOn.slice(-2)); date <= Number(plan.endsOn.slice(-2)); date += 1) {
      const day = `2026-11-${String(date).padStart(2, '0')}`;
      const before = new Map(MEMBERS.map((who) => [who, h.messagesTo(who).length]));
      await h.pass(`${day}T09:15:00Z`);
      h.set(`${day}T10:00:00Z`);
      await h.answer('ben', sprint.id, day, { 1: { left: '5' } });
      for (const time of ['12:15', '16:00', '17:00']) await h.pass(`${day}T${time}:00Z`);
      for (const who of MEMBERS) {
        const kinds = h.messagesTo(who).map(({ kind }) => kind);
        got.set(`${who} ${day}`, kinds.slice(before.get(who)));
      }
    }
  }
  return got;
}

const MEMBERS: readonly PersonName[] = ['ben', 'chi'];
const LAST_DAYS = SPRINTS.map(({ endsOn }) => endsOn);
const FIRST_DAYS = SPRINTS.map(({ startsOn }) => startsOn);

test('a member gets one message a working day, with a reminder if they are silent and a last call at the end', async () => {
  const got = await month();
  const weekend = ['2026-11-07', '2026-11-08', '2026-11-21', '2026-11-22'];
  for (const [key, kinds] of got) {
    const [who, day = ''] = key.split(' ');
    const expected = weekend.includes(day)
      ? []
      : [
          'daily-prompt',
          ...(who === 'chi' && !FIRST_DAYS.includes(day) ? ['reminder'] : []),
          ...(LAST_DAYS.includes(day) ? ['last-call'] : []),
        ];
    expect([key, kinds]).toEqual([key, expected]);
  }
  const sum = (who: PersonName): number =>
    [...got].filter(([key]) => key.startsWith(who)).reduce((all, [, kinds]) => all + kinds.length, 0);
  // Twenty working days in two sprints; two of the twenty are first mornings, which ask nothing.
  expect([sum('ben'), sum('chi')]).toEqual([20 + 2, 20 + 18 + 2]);
});

test('a member of two teams that ask at the same time gets no more', async () => {
  const h = harness();
  const teams = [await h.setUpTeam(), await h.setUpTeam({ name: 'Pilots', channelId: 'C2' })];
  const got = new Map<string, string[]>();
  for (const plan of SPRINTS) {
    for (const team of teams) await h.plan(team, { ...plan, cards: CARDS });
    for (let date = Number(plan.startsOn.slice(-2)); date <= Number(plan.endsOn.slice(-2)); date += 1) {
      const day = `2026-11-${String(date).padStart(2, '0')}`;
      const before = h.messagesTo('chi').length;
      for (const time of ['09:15', '12:15', '16:00', '17:00']) await h.pass(`${day}T${time}:00Z`);
      got.set(day, h.kindsTo('chi').slice(before));
    }
  }
  for (const kinds of got.values()) expect(kinds).toEqual([...new Set(kinds)]);
  expect([...got.values()].flat()).toHaveLength(20 + 18 + 2);
});
