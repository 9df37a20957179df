import { describe, expect, test } from 'vitest';
import { takeCards } from '../../../src/app/cards/change-owners.ts';
import { deliverPost } from '../../../src/app/posting/deliver.ts';
import type { MessageContent } from '../../../src/app/posting/post-kinds.ts';
import { leaveTeam } from '../../../src/app/team/leave-team.ts';
import { type SetupInput, setUpTeam } from '../../../src/app/team/set-up-team.ts';
import { postMessage } from '../../../src/slack/views/post-message.ts';
import {
  actorOf,
  CHANNEL,
  type Harness,
  harnessForEach,
  PEOPLE,
  type PersonName,
} from '../../support/app-harness.ts';

// A Friday. The sprint of the harness runs from Monday 2 to Friday 13 November 2026; prompts come at 09:15.
const harness = harnessForEach('2026-10-30T12:00:00Z');

const TEAM: SetupInput = {
  channelId: CHANNEL.channelId,
  name: 'Tugboats',
  timeZone: 'Europe/Lisbon',
  promptAt: '09:15',
  workingDays: [1, 2, 3, 4, 5],
  memberIds: [PEOPLE.ana, PEOPLE.ben],
  facilitatorIds: [PEOPLE.ana],
  productOwnerId: undefined,
};

function rolesTold(h: Harness, name: PersonName) {
  return h.messagesTo(name).flatMap((content) => (content.kind === 'role-given' ? [content] : []));
}

function read(content: MessageContent | undefined): string {
  return JSON.stringify(content && postMessage(content));
}

describe('somebody who is made something on a team', () => {
  test('reads who added them, what is asked and stored, and how to leave, all in one message', async () => {
    const h = harness();
    await setUpTeam(h.deps, actorOf('ana'), TEAM);
    await h.drain();
    expect(rolesTold(h, 'ben')).toMatchObject([{ roles: ['member'], byUserId: PEOPLE.ana }]);
    expect(rolesTold(h, 'ana')).toMatchObject([{ roles: ['member', 'facilitator'], isOwnDoing: true }]);
    const words = read(rolesTold(h, 'ben')[0]);
    for (const part of [
      `<@${PEOPLE.ana}> added you`,
      'what is left',
      'I store',
      '/loadline leave',
      '13 months',
    ])
      expect(words).toContain(part);
    expect(read(rolesTold(h, 'ana')[0])).not.toContain('added you');
    expect(rolesTold(h, 'chi')).toEqual([]);
  });

  test('reads it when they become facilitator or product owner, and nothing when they stay what they were', async () => {
    const h = harness();
    await h.setUpTeam(TEAM);
    const change = { facilitatorIds: [PEOPLE.ana, PEOPLE.ben], productOwnerId: PEOPLE.dayo };
    await setUpTeam(h.deps, actorOf('ana'), { ...TEAM, ...change });
    await h.drain();
    expect(rolesTold(h, 'ben').map(({ roles }) => roles)).toEqual([['facilitator']]);
    expect(rolesTold(h, 'dayo').map(({ roles }) => roles)).toEqual([['product-owner']]);
    expect(rolesTold(h, 'ana')).toEqual([]);
    expect(read(rolesTold(h, 'dayo')[0])).toContain('drop cards');
    expect(read(rolesTold(h, 'dayo')[0])).not.toContain('I store');
    await setUpTeam(h.deps, actorOf('ana'), { ...TEAM, ...change, name: 'Tugs' });
    await h.drain();
    expect([...rolesTold(h, 'ben'), ...rolesTold(h, 'dayo')]).toHaveLength(2);
  });

  test('reads nothing of a role that was taken back before it could be said', async () => {
    const h = harness();
    await setUpTeam(h.deps, actorOf('ana'), TEAM);
    await setUpTeam(h.deps, actorOf('ana'), { ...TEAM, memberIds: [PEOPLE.ana] });
    await h.drain();
    expect(rolesTold(h, 'ben')).toEqual([]);
  });

  test('is asked in a running sprint only after they have read it, whichever is tried first', async () => {
    const h = harness();
    const team = await h.setUpTeam(TEAM);
    await h.plan(team, { cards: 'Tide table, 5, @Ben' });
    await leaveTeam(h.deps, actorOf('ben'), { teamId: team.id });
    await h.drain();
    await setUpTeam(h.deps, actorOf('ana'), { ...TEAM, memberIds: [PEOPLE.ana, PEOPLE.ben, PEOPLE.chi] });
    await takeCards(h.deps, actorOf('ben'), { place: CHANNEL, words: '1' });
    h.set('2026-11-02T09:16:00Z');
    await h.tick();
    const owed = await h.owedPostIds();
    const kinds = await h.owedKinds();
    const promptId = owed[kinds.lastIndexOf('daily-prompt')] ?? '';
    expect(await deliverPost(h.deps, promptId)).toHaveProperty('retryAfterMs');
    expect(h.kindsTo('ben')).not.toContain('daily-prompt');
    await h.drain();
    expect(h.kindsTo('ben').slice(-2)).toEqual(['role-given', 'daily-prompt']);
  });
});

describe('somebody who left', () => {
  test('is asked nothing more, and hears it all again when they are added again', async () => {
    const h = harness();
    const team = await h.setUpTeam(TEAM);
    await h.plan(team, { cards: 'Tide table, 5, @Ben' });
    await leaveTeam(h.deps, actorOf('ben'), { teamId: team.id });
    for (const day of ['02', '03', '04', '05']) await h.pass(`2026-11-${day}T18:00:00Z`);
    expect(h.messagesTo('ben')).toEqual([]);
    await setUpTeam(h.deps, actorOf('ana'), TEAM);
    await h.drain();
    expect(rolesTold(h, 'ben').map(({ roles }) => roles)).toEqual([['member']]);
  });

  test('as the last facilitator leaves word that each who stays may act as one', async () => {
    const h = harness();
    const team = await h.setUpTeam({ ...TEAM, memberIds: [PEOPLE.ana, PEOPLE.ben, PEOPLE.chi] });
    await leaveTeam(h.deps, actorOf('ana'), { teamId: team.id });
    await h.drain();
    expect([h.kindsTo('ben'), h.kindsTo('chi'), h.kindsTo('ana')]).toEqual([
      ['no-facilitator'],
      ['no-facilitator'],
      [],
    ]);
    expect(read(h.messagesTo('ben')[0])).toContain('/loadline setup');
    // Ben does.
    await setUpTeam(h.deps, actorOf('ben'), {
      ...TEAM,
      memberIds: [PEOPLE.ben],
      facilitatorIds: [PEOPLE.ben],
    });
    await leaveTeam(h.deps, actorOf('ben'), { teamId: team.id });
    await h.drain();
    expect(h.kindsTo('chi')).toEqual(['no-facilitator', 'taken-off']);
  });
});
