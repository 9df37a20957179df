/** People whose account is gone are noticed by a daily look-up: the platform takes messages to them as if they were read. */
import { describe, expect, test } from 'vitest';
import {
  actorOf,
  CHANNEL,
  type Harness,
  harnessForEach,
  PEOPLE,
  type PersonName,
} from '../../support/app-harness.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');

/** Tide table is Ben's, Crane log is Chi's, Pilot roster is both's; people are asked at 09:15. */
async function running() {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team);
  await h.pass('2026-11-02T09:15:00Z');
  h.messenger.messages.length = 0;
  const lookedUp = countLookUps(h);
  return { h, team, sprint, lookedUp };
}

function setDeactivated(h: Harness, name: PersonName, isDeactivated: boolean): void {
  const person = h.directory.people.get(PEOPLE[name]);
  if (person) h.directory.people.set(PEOPLE[name], { ...person, isDeactivated });
}

function countLookUps(h: Harness): string[] {
  const lookedUp: string[] = [];
  const profile = h.directory.profile.bind(h.directory);
  h.directory.profile = (workspaceId, userId) => {
    lookedUp.push(userId);
    return profile(workspaceId, userId);
  };
  return lookedUp;
}

async function activeIn(h: Harness, teamId: string): Promise<string[]> {
  const people = await h.read((read) => read.peopleOf([teamId]));
  return (people.get(teamId) ?? []).map(({ userId }) => userId).sort();
}

describe('somebody whose account is gone', () => {
  test('leaves the team before the prompts, and the facilitator hears which card needs an owner', async () => {
    const { h, team, sprint } = await running();
    setDeactivated(h, 'ben', true);
    await h.pass('2026-11-03T09:15:00Z');
    await h.drain();
    expect(await activeIn(h, team.id)).toEqual([PEOPLE.ana, PEOPLE.chi]);
    expect(h.kindsTo('ben')).toEqual([]);
    expect(await h.read((read) => read.promptOf(sprint.id, PEOPLE.ben, '2026-11-03'))).toBeUndefined();
    expect(h.messagesTo('ana').filter(({ kind }) => kind === 'owner-needed')).toMatchObject([
      { cards: [{ number: 1, title: 'Tide table', ownerIds: [] }] },
    ]);
    const { cards } = await h.records(sprint.id);
    expect(cards.map(({ ownerIds }) => ownerIds)).toEqual([[], [PEOPLE.chi], [PEOPLE.chi]]);
  });

  test('comes back, once reactivated, when a facilitator adds them', async () => {
    const { h, team } = await running();
    setDeactivated(h, 'ben', true);
    await h.pass('2026-11-03T09:15:00Z');
    setDeactivated(h, 'ben', false);
    await h.pass('2026-11-04T09:15:00Z');
    expect(await activeIn(h, team.id)).toEqual([PEOPLE.ana, PEOPLE.chi]);
    await h.setUpTeam();
    await h.pass('2026-11-05T09:15:00Z');
    expect(await activeIn(h, team.id)).toEqual([PEOPLE.ana, PEOPLE.ben, PEOPLE.chi]);
  });
});

describe('the daily look-up', () => {
  test('asks for each member once a day, in the half hour before the prompts, in one of many processes', async () => {
    const { h, lookedUp } = await running();
    const everybody = [PEOPLE.ana, PEOPLE.ben, PEOPLE.chi];
    await h.pass('2026-11-03T08:44:00Z');
    expect(lookedUp).toEqual([]);
    h.set('2026-11-03T08:45:00Z');
    await Promise.all([h.tick(), h.tick(), h.tick()]);
    expect(lookedUp.toSorted()).toEqual(everybody);
    for (const at of ['2026-11-03T09:00:00Z', '2026-11-03T09:15:00Z', '2026-11-03T12:15:00Z'])
      await h.pass(at);
    expect(lookedUp).toHaveLength(3);
    await h.pass('2026-11-04T09:00:00Z');
    expect(lookedUp.toSorted()).toEqual([...everybody, ...everybody].sort());
  });

  test('changes nothing when it fails, and everybody is asked', async () => {
    const { h, team } = await running();
    h.directory.profile = () => Promise.reject(new Error('ratelimited'));
    await h.pass('2026-11-03T09:15:00Z');
    expect(await activeIn(h, team.id)).toEqual([PEOPLE.ana, PEOPLE.ben, PEOPLE.chi]);
    expect(h.kindsTo('ben')).toEqual(['daily-prompt']);
  });

  test('asks for those of teams without a sprint at different times of the day, and once', async () => {
    const h = harness();
    for (let i = 0; i < 24; i += 1) {
      await h.setUpTeam({ channelId: `C-IDLE${i}` }, actorOf('ana', `W-IDLE${i}`));
    }
    const limit = { all: 100, ofWorkspace: 5 };
    const claimedAt = async (time: string) => {
      const now = new Date(`2026-11-03T${time}:00Z`);
      return (await h.write((tx) => tx.claim.teamsToLookUp(now, now, limit))).length;
    };
    const claimed: number[] = [];
    for (const time of ['05:59', '11:59', '17:59', '23:59']) claimed.push(await claimedAt(time));
    expect(claimed.reduce((sum, count) => sum + count, 0)).toBe(24);
    expect(Math.max(...claimed)).toBeLessThan(20);
    expect(await claimedAt('23:59')).toBe(0);
  });

  test('takes the teams of a workspace five at a time, those that are asked first before the others', async () => {
    const { h, team } = await running();
    for (let i = 1; i <= 6; i += 1) {
      const other = await h.setUpTeam({ channelId: `${CHANNEL.channelId}0${i}`, promptAt: '09:10' });
      await h.plan(other);
    }
    await h.pass('2026-11-02T09:16:00Z');
    const claim = () =>
      h.write((tx) =>
        tx.claim.teamsToLookUp(new Date('2026-11-03T09:00:00Z'), new Date('2026-11-03T09:30:00Z'), {
          all: 100,
          ofWorkspace: 5,
        }),
      );
    const first = await claim();
    const second = await claim();
    expect([first.length, second.length, (await claim()).length]).toEqual([5, 2, 0]);
    expect(first.map(({ id }) => id)).not.toContain(team.id);
    expect(new Set([...first, ...second].map(({ id }) => id)).size).toBe(7);
  });
});
