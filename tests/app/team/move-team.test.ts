import { describe, expect, test } from 'vitest';
import { closeSprint, reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import { deliverPost } from '../../../src/app/posting/deliver.ts';
import { moveTeam } from '../../../src/app/team/move-team.ts';
import type { Place } from '../../../src/app/team/place.ts';
import type { Team } from '../../../src/app/team/team.ts';
import { sprintStatus } from '../../../src/app/watching/sprint-status.ts';
import {
  actorOf,
  CHANNEL,
  directMessagesOf,
  type Harness,
  harnessForEach,
  PEOPLE,
  refusalOf,
  WORKSPACE,
} from '../../support/app-harness.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');
const NEW: Place = { channelId: 'C2', isDirect: false };

async function withTeam(): Promise<{ h: Harness; team: Team }> {
  const h = harness();
  const team = await h.setUpTeam();
  await h.drain();
  h.messenger.messages.length = 0;
  return { h, team };
}

const move = (h: Harness, place = NEW, teamName = '') => moveTeam(h.deps, ana, { place, teamName });
const kindsIn = (h: Harness, { channelId }: Place) =>
  h.messenger.messages
    .filter(({ to }) => 'channelId' in to && to.channelId === channelId)
    .map(({ content }) => content.kind);

describe('a move', () => {
  test('takes the team, its sprint and what waits to the new channel, and says so in both', async () => {
    const { h, team } = await withTeam();
    await h.plan(team);
    expect((await move(h)).channelId).toBe('C2');
    await h.drain();
    expect(kindsIn(h, NEW)).toEqual(['plan', 'team-moved']);
    expect(kindsIn(h, CHANNEL)).toEqual(['team-moved']);
    expect(h.messenger.messages.map(({ content }) => 'isHere' in content && content.isHere)).toEqual([
      false,
      true,
      false,
    ]);
    await sprintStatus(h.deps, ana, NEW);
    await refusalOf(sprintStatus(h.deps, ana, CHANNEL), 'no-team-here');
    await h.pass('2026-11-13T17:00:00Z');
    expect(kindsIn(h, NEW)).toContain('verdict');
    expect(kindsIn(h, CHANNEL)).toEqual(['team-moved']);
  });

  test('leaves a posted verdict where it is, and corrects it there', async () => {
    const { h, team } = await withTeam();
    const { sprint } = await h.plan(team);
    await h.pass('2026-11-13T17:00:00Z');
    await move(h);
    await reopenSprint(h.deps, ana, { sprintId: sprint.id });
    await closeSprint(h.deps, ana, { sprintId: sprint.id });
    await h.drain();
    expect(kindsIn(h, CHANNEL)).toContain('verdict');
    expect(kindsIn(h, NEW)).toEqual(['team-moved']);
    expect(h.messenger.messages.find(({ content }) => content.kind === 'verdict')?.updates).toBe(1);
  });

  test('away from an archive says nothing there, and posts a corrected verdict in the new channel', async () => {
    const { h, team } = await withTeam();
    const { sprint } = await h.plan(team);
    await h.pass('2026-11-13T17:00:00Z');
    h.directory.channels.set(CHANNEL.channelId, { name: 'tugs', isArchived: true, isShared: false });
    await move(h);
    await reopenSprint(h.deps, ana, { sprintId: sprint.id });
    await closeSprint(h.deps, ana, { sprintId: sprint.id });
    h.messenger.failNext({ on: 'update', kind: 'refused', code: 'is_inactive', because: 'place-gone' });
    for (let i = 0; i < 3; i += 1) await h.drain();
    expect(kindsIn(h, NEW).slice(0, 2)).toEqual(['team-moved', 'verdict']);
    expect(kindsIn(h, NEW).slice(2).sort()).toEqual(['verdict-cards', 'verdict-notes', 'verdict-numbers']);
    expect(kindsIn(h, CHANNEL)).not.toContain('team-moved');
    expect(await h.owedKinds()).toEqual([]);
  });

  test('leaves a post that may be there already to be looked for in the former channel', async () => {
    const { h, team } = await withTeam();
    await h.plan(team);
    h.messenger.failNext({ on: 'post', kind: 'uncertain', gotThrough: true });
    await h.drain().catch(() => undefined);
    await move(h);
    await h.drain();
    expect(kindsIn(h, CHANNEL)).toEqual(['plan', 'team-moved']);
    expect(kindsIn(h, NEW)).toEqual(['team-moved']);
  });

  test('brings what the closed channel refused along, for the operator to send again', async () => {
    const { h, team } = await withTeam();
    const { sprint } = await h.plan(team);
    h.messenger.failNext({ on: 'post', kind: 'refused', code: 'is_archived', because: 'place-gone' });
    await h.drain();
    await move(h);
    const plan = await h.read((read) => read.postAbout(sprint.id, 'plan'));
    expect(plan).toMatchObject({ state: 'dead', recipient: { channelId: 'C2' } });
  });

  test('that the former channel doesn’t hear of concerns nobody', async () => {
    const { h } = await withTeam();
    await move(h);
    h.messenger.failNext({ on: 'post', kind: 'refused', code: 'restricted_action', because: 'permission' });
    const [, farewell] = await h.owedPostIds();

    await deliverPost(h.deps, farewell as string);
    expect(await h.owedKinds()).toEqual(['team-moved']);
  });
});

describe('a move is refused', () => {
  test('from direct messages', async () => {
    const { h } = await withTeam();
    await refusalOf(move(h, directMessagesOf('ana')), 'move-in-channel');
  });

  test.each([
    ['that the bot can’t see', undefined, 'channel-not-seen'],
    ['that is archived', { name: 'old', isArchived: true, isShared: false }, 'channel-archived'],
  ] as const)('to a channel %s', async (_which, channel, code) => {
    const { h } = await withTeam();
    h.directory.channels.set('C2', channel);
    await refusalOf(move(h), code);
    expect(await h.read((read) => read.teamByChannel(WORKSPACE, 'C1'))).toBeDefined();
  });

  test('to the team’s own channel, and to another team’s', async () => {
    const { h } = await withTeam();
    await refusalOf(move(h, CHANNEL), 'team-is-here');
    await h.setUpTeam(
      { channelId: 'C2', name: 'Pier', memberIds: [PEOPLE.chi], facilitatorIds: [PEOPLE.chi] },
      actorOf('chi'),
    );
    expect(await refusalOf(move(h), 'channel-has-a-team')).toMatchObject({ teamName: 'Pier' });
  });

  test('to a member who doesn’t facilitate, and to a stranger', async () => {
    const { h } = await withTeam();
    const by = (who: 'ben' | 'dayo') => moveTeam(h.deps, actorOf(who), { place: NEW, teamName: '' });
    await refusalOf(by('ben'), 'not-a-facilitator');
    await refusalOf(by('dayo'), 'no-team-of-yours');
  });

  test('to somebody with several teams until they name one', async () => {
    const { h, team } = await withTeam();
    await h.setUpTeam({ channelId: 'C3', name: 'Pier' });
    await refusalOf(move(h), 'which-team-moves');
    await refusalOf(move(h, NEW, 'Mole'), 'which-team-moves');
    expect(await move(h, NEW, ` ${team.name.toUpperCase()} `)).toMatchObject({
      id: team.id,
      channelId: 'C2',
    });
  });
});
