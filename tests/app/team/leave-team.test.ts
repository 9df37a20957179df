import { describe, expect, test } from 'vitest';
import { takeCards } from '../../../src/app/cards/change-owners.ts';
import { addGuests } from '../../../src/app/team/guests.ts';
import { leaveForm, leaveTeam } from '../../../src/app/team/leave-team.ts';
import {
  actorOf,
  CHANNEL,
  directMessagesOf,
  harnessForEach,
  PEOPLE,
  refusalOf,
} from '../../support/app-harness.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');

/** Card 1 is Ben’s, card 2 Chi’s, card 3 both’s; Ana facilitates. */
async function running() {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team);
  await h.pass('2026-11-04T10:00:00Z');
  return { h, team, sprint };
}

describe('leaving a team', () => {
  test('says before what becomes of the cards', async () => {
    const { h } = await running();
    const form = { leftAlone: 1, shared: 1, isLastFacilitator: false };
    expect(await leaveForm(h.deps, actorOf('ben'), { place: CHANNEL, teamName: '' })).toMatchObject(form);
    const last = { leftAlone: 0, shared: 0, isLastFacilitator: true };
    expect(await leaveForm(h.deps, actorOf('ana'), { place: CHANNEL, teamName: '' })).toMatchObject(last);
  });

  test('ends the questions, leaves cards to co-owners or to nobody, and tells the facilitators', async () => {
    const { h, team, sprint } = await running();
    await leaveTeam(h.deps, actorOf('ben'), { teamId: team.id });
    const owners = (await h.records(sprint.id)).cards.map(({ ownerIds }) => ownerIds);
    expect(owners).toEqual([[], [PEOPLE.chi], [PEOPLE.chi]]);
    const member = (await h.read((read) => read.membersOf(team.id))).find(
      ({ userId }) => userId === PEOPLE.ben,
    );
    expect(member).toMatchObject({ isActive: false, leftOn: '2026-11-04' });
    const asked = h.kindsTo('ben').length;
    await h.pass('2026-11-05T09:15:00Z');
    expect([h.kindsTo('ben').length, h.kindsTo('ana')]).toEqual([asked, ['owner-needed']]);
    await refusalOf(leaveTeam(h.deps, actorOf('ben'), { teamId: team.id }), 'not-a-member');
  });

  test('is possible for the only facilitator: each member may then act as one', async () => {
    const { h, team } = await running();
    await leaveTeam(h.deps, actorOf('ana'), { teamId: team.id });
    expect(await leaveForm(h.deps, actorOf('ben'), { place: CHANNEL, teamName: '' })).toMatchObject({
      team: { id: team.id },
    });
    expect((await h.setUpTeam({ facilitatorIds: [PEOPLE.chi] }, actorOf('ben'))).id).toBe(team.id);
  });

  test('is possible for the product owner, on the team or not', async () => {
    const { h, team } = await running();
    for (const productOwnerId of [PEOPLE.dayo, PEOPLE.ben]) {
      await h.setUpTeam({ productOwnerId });
      const actor = { workspaceId: team.workspaceId, userId: productOwnerId };
      const isMember = productOwnerId === PEOPLE.ben;
      expect(await leaveForm(h.deps, actor, { place: CHANNEL, teamName: '' })).toMatchObject({
        isProductOwner: true,
        isMember,
      });
      await leaveTeam(h.deps, actor, { teamId: team.id });
      expect((await h.read((read) => read.teamById(team.id)))?.productOwnerId).toBeUndefined();
      await refusalOf(leaveTeam(h.deps, actor, { teamId: team.id }), 'not-a-member');
    }
  });

  test('is possible for a guest of a sprint, who is asked nothing more', async () => {
    const { h, team } = await running();
    await addGuests(h.deps, actorOf('ana'), { place: CHANNEL, words: `<@${PEOPLE.dayo}>` });
    await takeCards(h.deps, actorOf('dayo'), { place: CHANNEL, words: '2' });
    await h.drain();
    expect(
      await leaveForm(h.deps, actorOf('dayo'), { place: directMessagesOf('dayo'), teamName: '' }),
    ).toMatchObject({
      shared: 1,
    });
    await leaveTeam(h.deps, actorOf('dayo'), { teamId: team.id });
    const asked = h.kindsTo('dayo').length;
    await h.pass('2026-11-05T09:15:00Z');
    await h.pass('2026-11-05T13:00:00Z');
    expect(h.kindsTo('dayo')).toHaveLength(asked);
  });

  test('names the team where somebody is on several, and may be out of its channel by now', async () => {
    const { h } = await running();
    await h.setUpTeam({ channelId: 'C2', name: 'Pilots', productOwnerId: PEOPLE.dayo });
    const leave = (teamName: string) =>
      leaveForm(h.deps, actorOf('ben'), { place: directMessagesOf('ben'), teamName });
    expect(await refusalOf(leave(''), 'which-team-is-left')).toEqual({ teamNames: ['Pilots', 'Tugboats'] });
    await refusalOf(leave('Lights'), 'which-team-is-left');
    expect(await leave(' pilots')).toMatchObject({ team: { name: 'Pilots' } });
  });
});
