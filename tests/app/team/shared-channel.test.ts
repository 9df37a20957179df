/** What people of another organisation read too is posted only after a yes. */
import { beforeEach, describe, expect, test } from 'vitest';
import { moveTeam } from '../../../src/app/team/move-team.ts';
import { type SetupInput, setUpTeam, setupForm } from '../../../src/app/team/set-up-team.ts';
import { watchChannel } from '../../../src/app/team/watch-channel.ts';
import { openHomePage } from '../../../src/app/watching/home-page.ts';
import { overview } from '../../../src/app/watching/overview.ts';
import { postMessage } from '../../../src/slack/views/post-message.ts';
import {
  actorOf,
  CHANNEL,
  type Harness,
  harnessForEach,
  PEOPLE,
  refusalOf,
  WORKSPACE,
} from '../../support/app-harness.ts';

const opened = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');
const OTHER = { channelId: 'C2', isDirect: false };

const TEAM: SetupInput = {
  channelId: CHANNEL.channelId,
  name: 'Tugboats',
  timeZone: 'Europe/Lisbon',
  promptAt: '09:15',
  workingDays: [1, 2, 3, 4, 5],
  memberIds: [PEOPLE.ana, PEOPLE.ben, PEOPLE.chi],
  facilitatorIds: [PEOPLE.ana],
  productOwnerId: undefined,
};

function share(h: Harness, { channelId } = CHANNEL, isShared = true): void {
  h.directory.channels.set(channelId, { name: 'tugs', isArchived: false, isShared });
  if (isShared) h.messenger.shared.add(channelId);
  else h.messenger.shared.delete(channelId);
}

/** Posts that wait as the overview says, and what the home page says is to be done next. */
async function waiting(key: 'ana' | 'ben'): Promise<unknown[]> {
  const [here] = (await overview(h.deps, actorOf(key), CHANNEL)).teams;
  const [home] = (await openHomePage(h.deps, actorOf(key))).teams;
  return [here?.heldBackPosts, home?.nextSteps];
}

let h: Harness;
beforeEach(() => {
  h = opened();
});

describe('a channel that is shared with another organisation', () => {
  test('gets a team only with a yes, which the form asks for', async () => {
    expect(await setupForm(h.deps, ana, CHANNEL)).toMatchObject({ isShared: false });
    share(h);
    expect(await setupForm(h.deps, ana, CHANNEL)).toMatchObject({ isShared: true, acceptsShared: false });
    expect(await refusalOf(setUpTeam(h.deps, ana, TEAM), 'channel-shared')).toEqual({ act: 'set-up' });
    await setUpTeam(h.deps, ana, { ...TEAM, acceptsShared: true });
    await h.drain();
    expect(h.kindsTo(CHANNEL)).toEqual(['team-set-up']);
    expect(await setupForm(h.deps, ana, CHANNEL)).toMatchObject({ isShared: true, acceptsShared: true });
  });

  test('takes in a team from elsewhere only with a yes', async () => {
    const team = await h.setUpTeam();
    share(h, OTHER);
    const move = (acceptsShared: boolean) =>
      moveTeam(h.deps, ana, { place: OTHER, teamName: '', acceptsShared });
    expect(await refusalOf(move(false), 'channel-shared')).toEqual({ act: 'move', teamName: '' });
    await move(true);
    await h.plan(team);
    await h.drain();
    expect(h.kindsTo(OTHER)).toEqual(['team-moved', 'plan']);
  });

  test('accepts nothing for the next channel of the team', async () => {
    share(h);
    share(h, OTHER);
    await setUpTeam(h.deps, ana, { ...TEAM, acceptsShared: true });
    await refusalOf(moveTeam(h.deps, ana, { place: OTHER, teamName: '' }), 'channel-shared');
  });
});

describe('a team’s channel that becomes shared later', () => {
  test('gets nothing more until a facilitator says yes; then what waited comes', async () => {
    const team = await h.setUpTeam();
    share(h);
    const { sprint } = await h.plan(team);
    await h.drain();
    await h.drain();
    expect(h.messagesTo(CHANNEL)).toEqual([]);
    expect(h.messagesTo('ana')).toMatchObject([{ kind: 'channel-unreachable', cause: 'shared' }]);
    // Later it is still to be seen, by who can say yes.
    expect(await waiting('ana')).toEqual([1, [{ code: 'say-who-reads', posts: 1 }]]);
    expect(await waiting('ben')).toEqual([0, []]);
    const [told] = h.messagesTo('ana');
    const words = JSON.stringify(told && postMessage(told));
    for (const part of ['titles and owners of cards', '/loadline setup', '/loadline move'])
      expect(words).toContain(part);
    await setUpTeam(h.deps, ana, { ...TEAM, acceptsShared: true });
    await h.drain();
    expect(h.kindsTo(CHANNEL)).toEqual(['plan']);
    expect(await waiting('ana')).toEqual([0, []]);
    // What is brought up to date later doesn't wait for anybody's word.
    await h.write((tx) => tx.write.posts.refreshSent(sprint.id, 'plan'));
    expect(await waiting('ana')).toEqual([0, []]);
    await h.drain();
    expect(h.kindsTo('ana')).toEqual(['channel-unreachable']);
  });

  test('takes no correction of what was posted before either', async () => {
    const team = await h.setUpTeam();
    const { sprint } = await h.plan(team);
    await h.drain();
    share(h);
    const plan = await h.read((read) => read.postAbout(sprint.id, 'plan'));
    await h.write((tx) => tx.write.posts.refresh(plan?.id ?? ''));
    await h.drain();
    expect(h.messenger.messages.find(({ content }) => content.kind === 'plan')?.updates).toBe(0);
  });

  test('is told at once where the platform says so, and the prompts go on', async () => {
    const team = await h.setUpTeam();
    await h.plan(team);
    await h.drain();
    share(h);
    const change = { kind: 'shared', channelId: CHANNEL.channelId } as const;
    await watchChannel(h.deps, WORKSPACE, change);
    await watchChannel(h.deps, WORKSPACE, change);
    await h.pass('2026-11-02T09:15:00Z');
    expect(h.kindsTo('ana')).toEqual(['channel-unreachable']);
    expect(h.kindsTo('ben')).toEqual(['daily-prompt']);
  });

  test('gets what waited when it is shared no more, or in the team’s next channel', async () => {
    const team = await h.setUpTeam();
    share(h);
    const { sprint } = await h.plan(team);
    await h.drain();
    await moveTeam(h.deps, ana, { place: OTHER, teamName: '' });
    await h.drain();
    expect(h.kindsTo(OTHER)).toEqual(['plan', 'team-moved']);
    expect(h.kindsTo(CHANNEL)).toEqual(['team-moved']);
    expect((await h.read((read) => read.postAbout(sprint.id, 'plan')))?.state).toBe('sent');
  });

  test('keeps its yes when the platform gives it another id for that', async () => {
    share(h);
    await setUpTeam(h.deps, ana, { ...TEAM, acceptsShared: true });
    const newChannelId = 'C9';
    await watchChannel(h.deps, WORKSPACE, { kind: 'new-id', channelId: CHANNEL.channelId, newChannelId });
    expect(await h.read((read) => read.teamByChannel(WORKSPACE, newChannelId))).toMatchObject({
      sharedChannelId: newChannelId,
    });
  });
});
