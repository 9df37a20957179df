import { describe, expect, test, vi } from 'vitest';
import { takeCards } from '../../../src/app/cards/change-owners.ts';
import { pullCards } from '../../../src/app/cards/pull-cards.ts';
import { closeSprint, reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import { sayDaysOff } from '../../../src/app/days-off/say-days-off.ts';
import { pastSprintAtClosing } from '../../../src/app/history/past-sprint-at-closing.ts';
import { readCardFile } from '../../../src/app/planning/card-file.ts';
import { editSprint } from '../../../src/app/planning/edit-sprint.ts';
import { planForm } from '../../../src/app/planning/plan-form.ts';
import { commitPlan, previewPlan } from '../../../src/app/planning/plan-sprint.ts';
import { addGuests, removeGuests } from '../../../src/app/team/guests.ts';
import { leaveTeam } from '../../../src/app/team/leave-team.ts';
import { setupForm } from '../../../src/app/team/set-up-team.ts';
import type { Member, Team } from '../../../src/app/team/team.ts';
import { sprintStatus } from '../../../src/app/watching/sprint-status.ts';
import {
  actorOf,
  CHANNEL,
  directMessagesOf,
  type Harness,
  harnessForEach,
  PEOPLE,
  problemsOf,
  refusalOf,
} from '../../support/app-harness.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then: ten working days.
const harness = harnessForEach('2026-10-30T12:00:00Z');

const DAYO = `<@${PEOPLE.dayo}>`;

function guest(h: Harness, words = DAYO) {
  return addGuests(h.deps, actorOf('ana'), { place: CHANNEL, words });
}

async function memberDays(h: Harness, team: Team, sprintId: string): Promise<number | undefined> {
  const sprint = await h.sprint(sprintId);
  const past = await h.read((read) => pastSprintAtClosing(read, team, sprint, sprint.closesAtInstant));
  return past.memberDays;
}

async function dayo(h: Harness, team: Team): Promise<Member | undefined> {
  const people = await h.read((read) => read.membersOf(team.id));
  return people.find(({ userId }) => userId === PEOPLE.dayo);
}

/** The team has three members. On Wednesday 4 November Dayo becomes a guest. */
async function withGuest() {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team);
  await h.pass('2026-11-04T10:00:00Z');
  await guest(h);
  await h.drain();
  return { h, team, sprint };
}

describe('a guest of a sprint', () => {
  test('reads on their first day what they are asked, what is stored and how to leave', async () => {
    const { h } = await withGuest();
    const [welcome] = h.messagesTo('dayo');
    expect(welcome).toMatchObject({ kind: 'guest-welcome', from: '2026-11-04', byUserId: PEOPLE.ana });
    await guest(h);
    await h.drain();
    expect(h.kindsTo('dayo')).toEqual(['guest-welcome']);
  });

  test('takes cards, is asked and answers, and their days count from the day on which they came', async () => {
    const { h, team, sprint } = await withGuest();
    await takeCards(h.deps, actorOf('dayo'), { place: CHANNEL, words: '2' });
    await h.pass('2026-11-05T09:15:00Z');
    expect(h.kindsTo('dayo')).toContain('daily-prompt');
    await h.answer('dayo', sprint.id, '2026-11-05', { 2: { left: '1' } });
    const status = await sprintStatus(h.deps, actorOf('dayo'), CHANNEL);
    expect([status.asked, status.answered]).toEqual([3, 1]);
    const { cards } = await pullCards(h.deps, actorOf('ana'), { place: CHANNEL, text: 'Fog horn, 3, @Dayo' });
    expect(cards[0]?.ownerIds).toEqual([PEOPLE.dayo]);
    expect(await memberDays(h, team, sprint.id)).toBe(3 * 10 + 8);
    await sayDaysOff(h.deps, actorOf('dayo'), { place: directMessagesOf('dayo'), words: '6 Nov' });
    expect(await memberDays(h, team, sprint.id)).toBe(3 * 10 + 7);
  });

  test('stays until the end of the sprint, wherever that is moved to', async () => {
    const { h, team, sprint } = await withGuest();
    await editSprint(h.deps, actorOf('ana'), { sprintId: sprint.id, edit: { endsOn: '2026-11-17' } });
    expect(await memberDays(h, team, sprint.id)).toBe(3 * 12 + 10);
  });

  test('goes when it closes, comes back when it is reopened, and the numbers stay', async () => {
    const { h, team, sprint } = await withGuest();
    await takeCards(h.deps, actorOf('dayo'), { place: CHANNEL, words: '2' });
    await h.pass('2026-11-13T17:00:00Z');
    expect(await dayo(h, team)).toMatchObject({ isActive: false });
    await refusalOf(sprintStatus(h.deps, actorOf('dayo'), CHANNEL), 'not-a-member');
    expect(await memberDays(h, team, sprint.id)).toBe(38);
    await reopenSprint(h.deps, actorOf('ana'), { place: CHANNEL });
    await h.answer('dayo', sprint.id, '2026-11-13', { 2: { left: '0' } });
    expect(await memberDays(h, team, sprint.id)).toBe(38);
    await closeSprint(h.deps, actorOf('ana'), { place: CHANNEL });
    expect(await dayo(h, team)).toMatchObject({ isActive: false });
    const stored = await h.read((read) => read.pastSprintsOf(team.id));
    expect(stored.map((past) => past.memberDays)).toEqual([38]);
  });

  test('has no part in the next sprint, nor in one that runs before their own', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const cards = 'Fog horn, 3, @Ben\nBuoy, 2';
    const { sprint: next } = await h.plan(team, { startsOn: '2026-11-16', endsOn: '2026-11-20', cards });
    await guest(h);
    const { sprint } = await h.plan(team);
    await h.pass('2026-11-04T10:00:00Z');
    await refusalOf(takeCards(h.deps, actorOf('dayo'), { place: CHANNEL, words: '2' }), 'takes-no-cards');
    const pulled = pullCards(h.deps, actorOf('ana'), { place: CHANNEL, text: 'Fog horn, 3, @Dayo' });
    await refusalOf(pulled, 'bad-input');
    expect(await memberDays(h, team, sprint.id)).toBe(30);
    expect(await memberDays(h, team, next.id)).toBe(20);
    await h.pass('2026-11-13T17:00:00Z');
    await h.pass('2026-11-16T09:15:00Z');
    await takeCards(h.deps, actorOf('dayo'), { place: CHANNEL, words: '2' });
    await h.pass('2026-11-20T17:00:00Z');
    await h.plan(team, { startsOn: '2026-11-23', endsOn: '2026-11-27', cards });
    await h.pass('2026-11-23T09:15:00Z');
    await refusalOf(takeCards(h.deps, actorOf('dayo'), { place: CHANNEL, words: '2' }), 'not-a-member');
  });

  test('may be one of the next sprint again, and then counts in each on the days of each', async () => {
    const { h, team, sprint } = await withGuest();
    await h.pass('2026-11-13T17:00:00Z');
    const { sprint: next } = await h.plan(team, { startsOn: '2026-11-16', endsOn: '2026-11-20' });
    await guest(h);
    expect(await memberDays(h, team, next.id)).toBe(20);
    expect(await memberDays(h, team, sprint.id)).toBe(38);
  });

  test('leaves when they like, and then counts until that day', async () => {
    const { h, team, sprint } = await withGuest();
    await h.pass('2026-11-09T10:00:00Z');
    await leaveTeam(h.deps, actorOf('dayo'), { teamId: team.id });
    expect(await memberDays(h, team, sprint.id)).toBe(30 + 3);
    await h.pass('2026-11-13T17:00:00Z');
    await reopenSprint(h.deps, actorOf('ana'), { place: CHANNEL });
    expect(await dayo(h, team)).toMatchObject({ isActive: false });
  });

  test('is taken out again by a facilitator, and their cards need another owner', async () => {
    const { h, team, sprint } = await withGuest();
    await takeCards(h.deps, actorOf('dayo'), { place: CHANNEL, words: '1 2' });
    await h.pass('2026-11-06T10:00:00Z');
    const remove = (words: string) => removeGuests(h.deps, actorOf('ana'), { place: CHANNEL, words });
    await refusalOf(remove('@ben'), 'bad-argument');
    await refusalOf(remove(''), 'bad-argument');
    expect((await remove('@dayo')).userIds).toEqual([PEOPLE.dayo]);
    const owners = (await h.records(sprint.id)).cards.map(({ ownerIds }) => ownerIds);
    expect(owners.flat()).not.toContain(PEOPLE.dayo);
    expect(await dayo(h, team)).toMatchObject({ isActive: false });
    expect(await memberDays(h, team, sprint.id)).toBe(30 + 2);
  });

  test('stays a guest while the team’s settings change, and isn’t offered as a member there', async () => {
    const { h, team, sprint } = await withGuest();
    expect((await setupForm(h.deps, actorOf('ana'), CHANNEL)).memberIds).not.toContain(PEOPLE.dayo);
    await h.setUpTeam({ promptAt: '10:00' });
    expect(await dayo(h, team)).toMatchObject({ isActive: true, isMember: false });
    expect(await memberDays(h, team, sprint.id)).toBe(38);
  });

  test('may become a member, and the days before still count', async () => {
    const { h, team, sprint } = await withGuest();
    await h.pass('2026-11-06T10:00:00Z');
    await h.setUpTeam({ memberIds: Object.values(PEOPLE) });
    expect(await memberDays(h, team, sprint.id)).toBe(38);
    await h.pass('2026-11-13T17:00:00Z');
    expect(await dayo(h, team)).toMatchObject({ isActive: true, isMember: true });
  });

  test('may be a facilitator who is no member otherwise, and stays one', async () => {
    const h = harness();
    const team = await h.setUpTeam({ memberIds: [PEOPLE.ben, PEOPLE.chi] });
    const { sprint } = await h.plan(team);
    await guest(h, `<@${PEOPLE.ana}>`);
    expect(await memberDays(h, team, sprint.id)).toBe(30);
    await h.pass('2026-11-13T17:00:00Z');
    expect((await setupForm(h.deps, actorOf('ana'), CHANNEL)).facilitatorIds).toEqual([PEOPLE.ana]);
  });
});

describe('planning with a guest', () => {
  const GUESTS = { guests: PEOPLE.dayo, cards: 'Tide table, 5, @Dayo\nCrane log, 3, @Chi' };

  test('counts their days, takes them as an owner, and names them before anybody is told', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const preview = await previewPlan(h.deps, actorOf('ana'), h.planInput(team, GUESTS));
    expect(preview).toMatchObject({ guestIds: [PEOPLE.dayo], time: { memberDays: 40 } });
    expect(preview.range.coming).toMatchObject({ members: 4, memberDays: 40 });
    await h.drain();
    expect(h.kindsTo('dayo')).toEqual([]);
    const { sprint } = await commitPlan(h.deps, actorOf('ana'), { teamId: team.id });
    await h.drain();
    expect(h.messagesTo('dayo')).toMatchObject([{ kind: 'guest-welcome', from: '2026-11-02' }]);
    expect((await h.records(sprint.id)).cards[0]?.ownerIds).toEqual([PEOPLE.dayo]);
    expect(await memberDays(h, team, sprint.id)).toBe(40);
  });

  test('keeps them in the draft, and offers neither them nor their cards’ places in the next one', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await previewPlan(h.deps, actorOf('ana'), h.planInput(team, GUESTS));
    expect((await planForm(h.deps, actorOf('ana'), CHANNEL)).draft.guests).toBe(PEOPLE.dayo);
    await commitPlan(h.deps, actorOf('ana'), { teamId: team.id });
    await h.pass('2026-11-13T17:00:00Z');
    const { draft } = await planForm(h.deps, actorOf('ana'), CHANNEL);
    expect([draft.guests, draft.cards]).toEqual([undefined, 'Tide table\t5\nCrane log\t3\t@Chi Wen']);
  });

  test('reads them as owners in a file of cards', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const outcome = await readCardFile(h.deps, actorOf('ana'), {
      teamId: team.id,
      plan: h.planInput(team, { ...GUESTS, cards: '' }),
      file: { fileName: 'cards.csv', text: 'Title,Points,Owner\nFog horn,3,Dayo\n' },
    });
    expect(outcome).toMatchObject({ kind: 'reading', reading: { read: { rows: 1, bad: [] } } });
  });

  test('is refused for a member, and passes over somebody who was erased from the draft', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const plan = (guests: string) =>
      previewPlan(h.deps, actorOf('ana'), h.planInput(team, { cards: 'Tide table, 5', guests }));
    expect(Object.keys(await problemsOf(plan(`${PEOPLE.ben} ${PEOPLE.dayo}`)))).toEqual(['guests']);
    expect((await plan(`somebody ${PEOPLE.dayo}`)).guestIds).toEqual([PEOPLE.dayo]);
  });
});

describe('naming a guest', () => {
  test('is for facilitators, while there is a sprint', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await refusalOf(guest(h), 'no-sprint-running');
    await h.plan(team);
    const byBen = { place: CHANNEL, words: DAYO };
    expect(await refusalOf(addGuests(h.deps, actorOf('ben'), byBen), 'not-a-facilitator')).toMatchObject({
      act: 'guests',
    });
    await refusalOf(removeGuests(h.deps, actorOf('ben'), byBen), 'not-a-facilitator');
    await refusalOf(addGuests(h.deps, actorOf('dayo'), byBen), 'not-a-member');
  });

  test.each([
    ['nobody', '', 'which-guests'],
    ['a name that isn’t a mention', '@dayo', 'which-guests'],
    ['more than people', `${DAYO} for card 3`, 'which-guests'],
    ['a member', `${DAYO} and <@${PEOPLE.ben}>`, 'is-member-already'],
  ])('is refused for %s, and then nobody becomes one', async (_, words, code) => {
    const h = harness();
    const team = await h.setUpTeam();
    await h.plan(team);
    expect(await refusalOf(guest(h, words), 'bad-argument')).toMatchObject({ problem: { code } });
    expect(await dayo(h, team)).toBeUndefined();
  });

  test('is refused for a crowd before anybody is looked up, which would use up the workspace’s questions', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await h.plan(team);
    const lookUps = vi.spyOn(h.directory, 'profile');
    const crowd = Array.from({ length: 21 }, (_, i) => `<@U0CROWD${i}>`).join(' ');
    expect(await refusalOf(guest(h, crowd), 'bad-argument')).toMatchObject({
      problem: { code: 'guests-at-once', most: 20 },
    });
    expect(lookUps).not.toHaveBeenCalled();
  });

  test.each([
    ['is-bot', { isBot: true }],
    ['is-deactivated', { isDeactivated: true }],
    ['is-outsider', { isOutsider: true }],
  ])('follows the rules for members: %s', async (code, profile) => {
    const h = harness();
    const team = await h.setUpTeam();
    await h.plan(team);
    const known = await h.directory.profile('W1', PEOPLE.dayo);
    h.directory.people.set(PEOPLE.dayo, { ...known, ...profile });
    expect(await refusalOf(guest(h), 'bad-argument')).toMatchObject({ problem: { code } });
  });

  test('is refused for somebody who can’t read the channel, in a plan as well', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    h.directory.outside.add(PEOPLE.dayo);
    const input = h.planInput(team, { guests: PEOPLE.dayo });
    expect(await problemsOf(previewPlan(h.deps, actorOf('ana'), input))).toEqual({
      guests: expect.stringContaining('Dayo Okoro is not in this channel'),
    });
    await h.plan(team);
    expect(await refusalOf(guest(h), 'bad-argument')).toMatchObject({ problem: { code: 'not-in-channel' } });
  });
});
