/** What people are on a team follows what they are in the workspace now, by a daily look-up. */
import { describe, expect, test } from 'vitest';
import { planForm } from '../../../src/app/planning/plan-form.ts';
import type { Profile } from '../../../src/app/ports/app-dependencies.ts';
import { leaveTeam } from '../../../src/app/team/leave-team.ts';
import { setUpTeam, setupForm } from '../../../src/app/team/set-up-team.ts';
import { postMessage } from '../../../src/slack/views/post-message.ts';
import {
  actorOf,
  CHANNEL,
  type Harness,
  harnessForEach,
  PEOPLE,
  type PersonName,
  refusalOf,
} from '../../support/app-harness.ts';

// Lisbon is on UTC in winter.
const harness = harnessForEach('2026-10-30T12:00:00Z');

/** From now on the platform says so of the person. */
function make(h: Harness, name: PersonName, is: Partial<Profile>): void {
  const person = h.directory.people.get(PEOPLE[name]) as Profile;
  h.directory.people.set(PEOPLE[name], { ...person, ...is });
}

const ALL = [PEOPLE.ana, PEOPLE.ben, PEOPLE.chi];
const mayPlan = (h: Harness, name: PersonName) => planForm(h.deps, actorOf(name), CHANNEL);

async function rolesIn(h: Harness, teamId: string) {
  const [team, members] = await h.read((read) =>
    Promise.all([read.teamById(teamId), read.membersOf(teamId)]),
  );
  const active = members.filter(({ isActive }) => isActive);
  return {
    members: active.map(({ userId }) => userId).sort(),
    facilitators: active.filter(({ isFacilitator }) => isFacilitator).map(({ userId }) => userId),
    productOwner: team?.productOwnerId,
  };
}

function wordsTo(h: Harness, name: PersonName): string {
  return h
    .messagesTo(name)
    .map((content) => postMessage(content).text)
    .join('\n');
}

describe('a facilitator who becomes a guest', () => {
  test('facilitates no more from the next day on, stays a member, and all who lead the team hear of it', async () => {
    const h = harness();
    const team = await h.setUpTeam({ memberIds: ALL, facilitatorIds: [PEOPLE.ana, PEOPLE.ben] });
    make(h, 'ana', { isGuest: true });
    await h.pass('2026-10-31T23:59:00Z');
    expect(await rolesIn(h, team.id)).toMatchObject({ members: [...ALL].sort(), facilitators: [PEOPLE.ben] });
    await refusalOf(mayPlan(h, 'ana'), 'not-a-facilitator');
    expect(wordsTo(h, 'ben')).toContain(`<@${PEOPLE.ben}> does now`);
    expect([h.kindsTo('ana'), h.kindsTo('ben'), h.kindsTo('chi')]).toEqual([
      ['role-ended'],
      ['role-ended'],
      [],
    ]);
    // Nothing is said twice, and who is no guest any more may be named again.
    await h.pass('2026-11-01T23:59:00Z');
    expect(h.kindsTo('ben')).toEqual(['role-ended']);
    make(h, 'ana', { isGuest: false });
    await h.pass('2026-11-02T23:59:00Z');
    await leaveTeam(h.deps, actorOf('ben'), { teamId: team.id });
    await expect(mayPlan(h, 'ana')).resolves.toBeDefined();
  });

  test('is looked up before the prompts of a running sprint too', async () => {
    const h = harness();
    const team = await h.setUpTeam({ memberIds: ALL, facilitatorIds: [PEOPLE.ana, PEOPLE.ben] });
    await h.plan(team);
    await h.pass('2026-11-02T09:15:00Z');
    make(h, 'ana', { isGuest: true });
    await h.pass('2026-11-03T09:15:00Z');
    expect((await rolesIn(h, team.id)).facilitators).toEqual([PEOPLE.ben]);
  });

  test('as the last one leaves those to act who are no guests, and them alone', async () => {
    const h = harness();
    const team = await h.setUpTeam({ memberIds: ALL, facilitatorIds: [PEOPLE.ana] });
    make(h, 'ana', { isGuest: true });
    make(h, 'chi', { isGuest: true });
    await h.pass('2026-10-31T23:59:00Z');
    expect((await rolesIn(h, team.id)).facilitators).toEqual([]);
    await expect(mayPlan(h, 'ben')).resolves.toBeDefined();
    for (const guest of ['ana', 'chi'] as const) await refusalOf(mayPlan(h, guest), 'not-a-facilitator');
    expect(h.kindsTo('ben')).toEqual(['no-facilitator']);
    expect(h.kindsTo('ana')).toEqual(['role-ended']);
    expect(h.kindsTo('chi')).toEqual([]);
  });

  test('and did nothing else there is on the team no more', async () => {
    const h = harness();
    const team = await h.setUpTeam({ memberIds: [PEOPLE.ben], facilitatorIds: [PEOPLE.ana, PEOPLE.ben] });
    make(h, 'ana', { isGuest: true });
    await h.pass('2026-10-31T23:59:00Z');
    expect((await rolesIn(h, team.id)).members).toEqual([PEOPLE.ben]);
  });
});

test('a guest who is added leads no team, not even one without a facilitator', async () => {
  const h = harness();
  make(h, 'chi', { isGuest: true });
  const team = await h.setUpTeam({ memberIds: ALL, facilitatorIds: [PEOPLE.ana] });
  await leaveTeam(h.deps, actorOf('ana'), { teamId: team.id });
  await refusalOf(mayPlan(h, 'chi'), 'not-a-facilitator');
  await expect(mayPlan(h, 'ben')).resolves.toBeDefined();
});

test('a team of guests alone can be set up again by somebody in its channel, and goes on', async () => {
  const h = harness();
  h.directory.channels.set(CHANNEL.channelId, { name: 'tugs', isArchived: false, isShared: false });
  const team = await h.setUpTeam({ memberIds: [PEOPLE.ana, PEOPLE.ben], facilitatorIds: [PEOPLE.ana] });
  for (const name of ['ana', 'ben'] as const) make(h, name, { isGuest: true });
  await h.pass('2026-10-31T23:59:00Z');
  await refusalOf(setupForm(h.deps, actorOf('ben'), CHANNEL), 'guest-set-up');
  expect(await setupForm(h.deps, actorOf('dayo'), CHANNEL)).toMatchObject({ sprintsLeftBehind: 0 });
  const input = { ...team, memberIds: [PEOPLE.ana, PEOPLE.ben], facilitatorIds: [PEOPLE.dayo] };
  expect(await setUpTeam(h.deps, actorOf('dayo'), input)).toMatchObject({ id: team.id });
});

describe.each([
  ['whose account is gone', { isDeactivated: true }],
  ['who is of another workspace now', { isOutsider: true }],
] as const)('somebody %s', (_, is) => {
  test('is nothing on a team any more, neither member nor facilitator nor product owner', async () => {
    const h = harness();
    const roles = { memberIds: ALL, facilitatorIds: [PEOPLE.ana, PEOPLE.ben], productOwnerId: PEOPLE.ben };
    const team = await h.setUpTeam(roles);
    const other = await h.setUpTeam({ ...roles, channelId: 'C2', productOwnerId: PEOPLE.dayo });
    make(h, 'ben', is);
    make(h, 'dayo', is);
    await h.pass('2026-10-31T23:59:00Z');
    const left = { members: [PEOPLE.ana, PEOPLE.chi], facilitators: [PEOPLE.ana], productOwner: undefined };
    expect(await rolesIn(h, team.id)).toEqual(left);
    expect(await rolesIn(h, other.id)).toEqual(left);
    expect(h.kindsTo('ana')).toEqual(['role-ended', 'role-ended']);
    expect(wordsTo(h, 'ana')).toContain('has no product owner any more');
  });
});

test('a guest may go on as product owner', async () => {
  const h = harness();
  const team = await h.setUpTeam({
    memberIds: ALL,
    facilitatorIds: [PEOPLE.ana],
    productOwnerId: PEOPLE.dayo,
  });
  make(h, 'dayo', { isGuest: true });
  await h.pass('2026-10-31T23:59:00Z');
  expect((await rolesIn(h, team.id)).productOwner).toBe(PEOPLE.dayo);
});
