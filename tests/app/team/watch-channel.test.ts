/** The facilitators hear that the team's channel is closed to the bot, and a channel with a new id keeps its team. */
import { describe, expect, test } from 'vitest';
import { watchChannel } from '../../../src/app/team/watch-channel.ts';
import { CHANNEL, type Harness, harnessForEach, WORKSPACE } from '../../support/app-harness.ts';

const harness = harnessForEach('2026-11-02T12:00:00Z');
const { channelId } = CHANNEL;

async function withTeam(): Promise<Harness> {
  const h = harness();
  await h.setUpTeam();
  h.messenger.messages.length = 0;
  return h;
}

async function toldAfter(
  h: Harness,
  kind: 'closed' | 'bot-left',
  channel = channelId,
  workspace = WORKSPACE,
) {
  await watchChannel(h.deps, workspace, { kind, channelId: channel });
  await h.drain();
  return h.messenger.messages.map(({ to, content }) => ({ to, ...content }));
}

describe('a channel that is closed to the bot', () => {
  test.each([
    ['archived', { name: 'tugs', isArchived: true, isShared: false }, 'closed'],
    ['deleted', undefined, 'closed'],
    ['private, and the bot was taken out', undefined, 'bot-left'],
  ] as const)('is told to the facilitator once: %s', async (_, channel, kind) => {
    const h = await withTeam();
    h.directory.channels.set(channelId, channel);
    await toldAfter(h, kind);
    expect(await toldAfter(h, kind)).toMatchObject([
      { to: { userId: 'UANA' }, kind: 'channel-unreachable', cause: 'place-gone' },
    ]);
  });

  test('is told as well when the bot was taken out of a public one, in which it could post without being read back', async () => {
    expect(await toldAfter(await withTeam(), 'bot-left')).toMatchObject([
      { kind: 'channel-unreachable', cause: 'bot-left' },
    ]);
  });

  test.each([
    ['closed', 'place-gone'],
    ['bot-left', 'bot-left'],
  ] as const)('is told as the event says while the platform does not answer: %s', async (kind, cause) => {
    const h = await withTeam();
    h.directory.channel = () => Promise.reject(new Error('no answer'));
    expect(await toldAfter(h, kind)).toMatchObject([{ cause }]);
  });

  test('is not told when it is open again by then, nor where no team is', async () => {
    const h = await withTeam();
    expect(await toldAfter(h, 'closed')).toEqual([]);
    h.directory.channels.set(channelId, undefined);
    expect(await toldAfter(h, 'closed', 'C9OTHER')).toEqual([]);
    expect(await toldAfter(h, 'closed', channelId, 'W2')).toEqual([]);
  });
});

describe('a channel that gets another id', () => {
  const moved = (h: Harness, newChannelId: string) =>
    watchChannel(h.deps, WORKSPACE, { kind: 'new-id', channelId, newChannelId });

  test('keeps its team, and its posts go to the new id, also those that wait', async () => {
    const h = await withTeam();
    const team = await h.read((read) => read.teamByChannel(WORKSPACE, channelId));
    if (!team) throw new Error('no team');
    const { sprint } = await h.plan(team);
    await moved(h, 'C2NEW');
    await moved(h, 'C2NEW');
    expect(await h.read((read) => read.teamByChannel(WORKSPACE, 'C2NEW'))).toEqual({
      ...team,
      channelId: 'C2NEW',
    });
    expect(await h.read((read) => read.teamByChannel(WORKSPACE, channelId))).toBeUndefined();
    await h.drain();
    const plan = await h.read((read) => read.postAbout(sprint.id, 'plan'));
    expect(plan).toMatchObject({ recipient: { channelId: 'C2NEW' }, postedAt: { channelId: 'C2NEW' } });
  });

  test('keeps where its sent posts are, so that they can still be changed', async () => {
    const h = await withTeam();
    const team = await h.read((read) => read.teamByChannel(WORKSPACE, channelId));
    if (!team) throw new Error('no team');
    const { sprint } = await h.plan(team);
    await h.drain();
    await moved(h, 'C2NEW');
    const plan = await h.read((read) => read.postAbout(sprint.id, 'plan'));
    expect(plan?.postedAt?.channelId).toBe('C2NEW');
  });

  test('that another team has is refused', async () => {
    const h = await withTeam();
    await h.setUpTeam({ channelId: 'C2NEW', name: 'Pilots' });
    await expect(moved(h, 'C2NEW')).rejects.toMatchObject({ code: 'channel-has-a-team' });
  });
});
