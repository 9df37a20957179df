import { describe, expect, test } from 'vitest';
import { closeSprint } from '../../../src/app/closing/end-sprint.ts';
import type { AppDependencies } from '../../../src/app/ports/app-dependencies.ts';
import { setUpTeam, setupForm } from '../../../src/app/team/set-up-team.ts';
import { bindUseCases } from '../../../src/app/use-cases.ts';
import {
  actorOf,
  CHANNEL,
  type Harness,
  harnessForEach,
  PEOPLE,
  type PersonName,
  problemsOf,
  refusalOf,
} from '../../support/app-harness.ts';

const harness = harnessForEach('2026-10-30T12:00:00Z');

/** From now on the platform says so of the person. */
function make(
  h: Harness,
  name: PersonName,
  is: { isGuest?: boolean; isOutsider?: boolean; isBot?: boolean; isAdmin?: boolean },
) {
  const person = h.directory.people.get(PEOPLE[name]);
  if (!person) throw new Error('nobody has that name');
  h.directory.people.set(PEOPLE[name], { ...person, ...is });
}

const SETUP = {
  channelId: 'C1',
  name: 'Harbour',
  timeZone: 'Europe/Lisbon',
  promptAt: '09:15',
  workingDays: [1, 2, 3, 4, 5],
  memberIds: [PEOPLE.ana, PEOPLE.ben],
  facilitatorIds: [PEOPLE.ana],
  productOwnerId: undefined,
} as const;

describe('somebody of another workspace', () => {
  test.each([
    ['memberIds', { memberIds: [PEOPLE.ana, PEOPLE.chi] }],
    ['facilitatorIds', { facilitatorIds: [PEOPLE.ana, PEOPLE.chi] }],
    ['productOwnerId', { productOwnerId: PEOPLE.chi }],
  ])('can’t be one of the %s', async (field, change) => {
    const h = harness();
    make(h, 'chi', { isOutsider: true });
    expect(await problemsOf(setUpTeam(h.deps, actorOf('ana'), { ...SETUP, ...change }))).toEqual({
      [field]: expect.stringContaining('Chi Wen belongs to another workspace'),
    });
  });

  test.each([
    ['memberIds', { memberIds: [PEOPLE.ana, PEOPLE.chi] }],
    ['facilitatorIds', { facilitatorIds: [PEOPLE.ana, PEOPLE.chi] }],
    ['productOwnerId', { productOwnerId: PEOPLE.chi }],
  ])('is as little among the %s when it is a bot', async (field, change) => {
    const h = harness();
    make(h, 'chi', { isBot: true });
    expect(await problemsOf(setUpTeam(h.deps, actorOf('ana'), { ...SETUP, ...change }))).toEqual({
      [field]: expect.stringContaining('Chi Wen is a bot'),
    });
  });

  test('can’t set a team up, neither open the form nor send it', async () => {
    const h = harness();
    make(h, 'chi', { isOutsider: true });
    await refusalOf(setupForm(h.deps, actorOf('chi'), CHANNEL), 'outsider');
    await refusalOf(setUpTeam(h.deps, actorOf('chi'), SETUP), 'outsider');
    expect(await h.read((read) => read.teamByChannel('W1', 'C1'))).toBeUndefined();
  });

  test('isn’t suggested as a member', async () => {
    const h = harness();
    make(h, 'chi', { isOutsider: true });
    const { memberIds } = await setupForm(h.deps, actorOf('ana'), CHANNEL);
    expect(memberIds).not.toContain(PEOPLE.chi);
    expect(memberIds).toContain(PEOPLE.ben);
  });

  test('reads that this is why, whatever they ask for', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const { sprint } = await h.plan(team);
    make(h, 'dayo', { isOutsider: true });
    const { sprintStatus, overview, closeSprint: close, answerForm } = bindUseCases(h.deps);
    const dayo = actorOf('dayo');
    const elsewhere = { channelId: 'C-without-a-team', isDirect: false };
    await refusalOf(sprintStatus(dayo, CHANNEL), 'outsider');
    await refusalOf(sprintStatus(dayo, elsewhere), 'outsider');
    await refusalOf(overview(dayo, CHANNEL), 'outsider');
    await refusalOf(close(dayo, { sprintId: sprint.id }), 'outsider');
    await refusalOf(answerForm(dayo, { sprintId: sprint.id }), 'outsider');
  });
});

describe('a guest', () => {
  test('can be a member and the product owner, and answers for their cards', async () => {
    const h = harness();
    make(h, 'ben', { isGuest: true });
    const team = await h.setUpTeam({ productOwnerId: PEOPLE.ben });
    const { sprint } = await h.plan(team, { cards: 'Tide table, 5, @Ben' });
    h.set('2026-11-02T10:00:00Z');
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '3' } });
    expect((await h.records(sprint.id)).facts).not.toEqual([]);
  });

  test('can’t be a facilitator', async () => {
    const h = harness();
    make(h, 'ben', { isGuest: true });
    const attempt = setUpTeam(h.deps, actorOf('ana'), { ...SETUP, facilitatorIds: [PEOPLE.ben] });
    expect(await problemsOf(attempt)).toEqual({
      facilitatorIds: expect.stringContaining('guests can’t be facilitators'),
    });
  });

  test('can’t set a team up', async () => {
    const h = harness();
    make(h, 'ben', { isGuest: true });
    await refusalOf(setupForm(h.deps, actorOf('ben'), CHANNEL), 'guest-set-up');
    await refusalOf(setUpTeam(h.deps, actorOf('ben'), SETUP), 'guest-set-up');
  });

  test('who has facilitated since before hands that on', async () => {
    const h = harness();
    await h.setUpTeam({ memberIds: [PEOPLE.ana, PEOPLE.ben], facilitatorIds: [PEOPLE.ben] });
    make(h, 'ben', { isGuest: true });
    expect(await setUpTeam(h.deps, actorOf('ben'), SETUP)).toMatchObject({ channelId: 'C1' });
    await refusalOf(setUpTeam(h.deps, actorOf('ben'), SETUP), 'not-a-facilitator');
  });
});

describe('a bot', () => {
  test('can’t be the product owner or a facilitator either', async () => {
    const h = harness();
    make(h, 'chi', { isBot: true });
    const roles = { facilitatorIds: [PEOPLE.chi], productOwnerId: PEOPLE.chi };
    expect(Object.keys(await problemsOf(setUpTeam(h.deps, actorOf('ana'), { ...SETUP, ...roles })))).toEqual([
      'facilitatorIds',
      'productOwnerId',
    ]);
  });
});

test('a stranger of this workspace is refused as before, and so is everybody while the platform is silent', async () => {
  const h = harness();
  const { sprint } = await h.plan(await h.setUpTeam());
  const { closeSprint: close } = bindUseCases(h.deps);
  await refusalOf(close(actorOf('dayo'), { sprintId: sprint.id }), 'not-a-member');
  h.directory.people.delete(PEOPLE.dayo);
  await refusalOf(close(actorOf('dayo'), { sprintId: sprint.id }), 'not-a-member');
  await refusalOf(closeSprint(h.deps, actorOf('dayo'), { sprintId: sprint.id }), 'not-a-member');
});

describe('where the operator has named who sets teams up', () => {
  const limited = (h: Harness, setUpUsers: AppDependencies['setUpUsers']): AppDependencies => ({
    ...h.deps,
    setUpUsers,
  });

  test('others neither open the form nor send it', async () => {
    const h = harness();
    const deps = limited(h, { admins: false, userIds: [PEOPLE.ben] });
    expect(await refusalOf(setupForm(deps, actorOf('ana'), CHANNEL), 'set-up-left-to-others')).toEqual({
      admins: false,
    });
    await refusalOf(setUpTeam(deps, actorOf('ana'), SETUP), 'set-up-left-to-others');
    await setupForm(deps, actorOf('ben'), CHANNEL);
    await setUpTeam(deps, actorOf('ben'), SETUP);
  });

  test('those who administer the workspace may, where they are named', async () => {
    const h = harness();
    const deps = limited(h, { admins: true, userIds: [] });
    await refusalOf(setUpTeam(deps, actorOf('ana'), SETUP), 'set-up-left-to-others');
    make(h, 'ana', { isAdmin: true });
    await refusalOf(
      setUpTeam(limited(h, { admins: false, userIds: [] }), actorOf('ana'), SETUP),
      'set-up-left-to-others',
    );
    await setUpTeam(deps, actorOf('ana'), SETUP);
  });

  test('a team that is there is still changed by its facilitators', async () => {
    const h = harness();
    await h.setUpTeam();
    await setUpTeam(limited(h, { admins: false, userIds: [] }), actorOf('ana'), { ...SETUP, name: 'Tugs' });
  });
});
