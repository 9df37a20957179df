/** People who leave a team in the middle of a sprint, or whose account is gone: what they said stays, nothing more is asked. */

import { sql } from 'drizzle-orm';
import { describe, expect, test } from 'vitest';
import { setupForm } from '../../../src/app/team/set-up-team.ts';
import { overview } from '../../../src/app/watching/overview.ts';
import { aMember } from '../../store/store-examples.ts';
import { actorOf, CHANNEL, type Harness, harnessForEach, PEOPLE } from '../../support/app-harness.ts';
import { rowsOf } from '../../support/rows-of.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const WITHOUT_BEN = { memberIds: [PEOPLE.ana, PEOPLE.chi], facilitatorIds: [PEOPLE.ana] };

/** Tide table is Ben's, Crane log is Chi's, Pilot roster is both's; all were asked on Monday morning. */
async function running() {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team);
  await h.pass('2026-11-02T09:15:00Z');
  await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '3', note: 'half way' } });
  await h.drain();
  return { h, team, sprint };
}

async function ownersIn(h: Harness, sprintId: string): Promise<(readonly string[])[]> {
  return (await h.records(sprintId)).cards.map(({ ownerIds }) => ownerIds);
}

/** After the look-up of that day Ben's account is gone: the platform refuses the next message to him, and says so of him. */
async function deactivateBen(h: Harness, code = 'user_disabled'): Promise<void> {
  await h.pass('2026-11-03T09:00:00Z');
  const ben = h.directory.people.get(PEOPLE.ben);
  if (ben) h.directory.people.set(PEOPLE.ben, { ...ben, isDeactivated: true });
  h.messenger.failNext({ on: 'post', kind: 'refused', code });
}

describe('a member who is taken off the team in the middle of a sprint', () => {
  test('keeps what was answered, and gives up open cards but not finished ones', async () => {
    const { h, sprint } = await running();
    await h.answer('ben', sprint.id, '2026-11-02', { 3: { left: '0' } });
    await h.setUpTeam(WITHOUT_BEN);
    expect(await ownersIn(h, sprint.id)).toEqual([[], [PEOPLE.chi], [PEOPLE.ben, PEOPLE.chi]]);
    const { facts } = await h.records(sprint.id);
    expect(facts.map((fact) => [fact.memberId, fact.note])).toEqual([
      [PEOPLE.ben, 'half way'],
      [PEOPLE.ben, ''],
    ]);
  });

  test('is asked, reminded and called no more, not even by what was waiting to be sent', async () => {
    const { h, sprint } = await running();
    h.set('2026-11-03T09:15:00Z');
    await h.tick();
    await h.setUpTeam(WITHOUT_BEN);
    h.messenger.messages.length = 0;
    for (const at of ['2026-11-03T12:15:00Z', '2026-11-04T09:15:00Z', '2026-11-13T16:30:00Z'])
      await h.pass(at);
    expect(h.kindsTo('ben')).toEqual([]);
    expect(h.kindsTo('chi').length).toBeGreaterThan(0);
    expect((await h.sprint(sprint.id)).state).toBe('open');
    const owed = await rowsOf(
      h.database,
      sql`select kind from loadline.posts where user_id = ${PEOPLE.ben} and kind not in ('daily-prompt', 'role-given', 'taken-off')`,
    );
    expect(owed).toEqual([]);
  });

  test('has the facilitator told once which cards need an owner, without a word of who left', async () => {
    const { h, sprint } = await running();
    await h.setUpTeam();
    await h.setUpTeam({ ...WITHOUT_BEN, name: 'Tugs' });
    const posts = await h.read((read) => read.postAbout(sprint.id, 'owner-needed'));
    expect(posts?.recipient).toEqual({ userId: PEOPLE.ana });
    await h.setUpTeam(WITHOUT_BEN);
    expect((await h.read((read) => read.postAbout(sprint.id, 'owner-needed')))?.id).toBe(posts?.id);
    expect(JSON.stringify(posts)).not.toContain(PEOPLE.ben);
  });

  test('who owned every card together with others: nobody is told', async () => {
    const { h, sprint } = await running();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '0' } });
    await h.setUpTeam(WITHOUT_BEN);
    expect(await h.read((read) => read.postAbout(sprint.id, 'owner-needed'))).toBeUndefined();
    expect(await ownersIn(h, sprint.id)).toEqual([[PEOPLE.ben], [PEOPLE.chi], [PEOPLE.chi]]);
  });
});

describe('a member whose account is gone', () => {
  test('is off the team once a message to them is refused, and the facilitator is told once', async () => {
    const { h, team, sprint } = await running();
    await deactivateBen(h);
    h.messenger.messages.length = 0;
    await h.pass('2026-11-03T09:15:00Z');
    await h.drain();
    await h.pass('2026-11-04T09:15:00Z');
    await h.drain();
    const members = await h.read((read) => read.membersOf(team.id));
    expect(members.filter(({ isActive }) => isActive).map(({ userId }) => userId)).toEqual([
      PEOPLE.ana,
      PEOPLE.chi,
    ]);
    expect(h.kindsTo('ben')).toEqual([]);
    const told = h.messagesTo('ana').filter(({ kind }) => kind === 'owner-needed');
    expect(told).toMatchObject([{ cards: [{ number: 1, title: 'Tide table', ownerIds: [] }] }]);
    expect(await ownersIn(h, sprint.id)).toEqual([[], [PEOPLE.chi], [PEOPLE.chi]]);
  });

  test.each(['missing_scope', 'token_revoked', 'messages_tab_disabled', 'invalid_blocks'])(
    'is not taken to be gone by a refusal that is about the bot: %s',
    async (code) => {
      const { h, team } = await running();
      await deactivateBen(h, code);
      await h.pass('2026-11-03T09:15:00Z');
      const members = await h.read((read) => read.membersOf(team.id));
      expect(members.every(({ isActive }) => isActive)).toBe(true);
    },
  );

  test('is not taken to be gone while the platform says that the account is there', async () => {
    const { h, team } = await running();
    h.messenger.failNext({ on: 'post', kind: 'refused', code: 'channel_not_found' });
    await h.pass('2026-11-03T09:15:00Z');
    const members = await h.read((read) => read.membersOf(team.id));
    expect(members.every(({ isActive }) => isActive)).toBe(true);
  });
});

describe('a team whose last facilitator is gone', () => {
  test('lets every member act as one, until it names one', async () => {
    const h = harness();
    const team = await h.setUpTeam({ facilitatorIds: [PEOPLE.ben] }, actorOf('ben'));
    await h.plan(team).catch(() => undefined);
    expect((await overview(h.deps, actorOf('chi'), CHANNEL)).teams[0]?.isFacilitator).toBe(false);
    await h.write((tx) =>
      tx.write.teams.saveMembers(team.id, [
        aMember({ userId: PEOPLE.ben, name: 'Ben Ode', isActive: false }),
      ]),
    );
    expect((await overview(h.deps, actorOf('chi'), CHANNEL)).teams[0]?.isFacilitator).toBe(true);
    expect((await setupForm(h.deps, actorOf('chi'), CHANNEL)).facilitatorIds).toEqual([]);
    await h.setUpTeam({ facilitatorIds: [PEOPLE.chi] }, actorOf('chi'));
    expect((await overview(h.deps, actorOf('ana'), CHANNEL)).teams[0]?.isFacilitator).toBe(false);
  });
});
