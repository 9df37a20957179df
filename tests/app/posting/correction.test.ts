import { describe, expect, test } from 'vitest';
import { closeSprint, reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import { deliverPost } from '../../../src/app/posting/deliver.ts';
import { DeliveryFailure } from '../../../src/app/posting/delivery-failure.ts';
import type { Post } from '../../../src/app/posting/posts.ts';
import { actorOf, CHANNEL, harnessForEach } from '../../support/app-harness.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');

/** A verdict that was posted, then corrected by reopening and closing; the correction waits. */
async function correctedVerdict() {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team);
  await h.drain();
  await h.pass('2026-11-13T17:00:00Z');
  const correct = async () => {
    await reopenSprint(h.deps, ana, { sprintId: sprint.id });
    await closeSprint(h.deps, ana, { sprintId: sprint.id });
  };
  const post = () => h.read((read) => read.postAbout(sprint.id, 'verdict') as Promise<Post>);
  const { id, postedAt: first } = await post();
  await correct();
  h.messenger.calls.length = 0;
  const verdicts = () => h.messenger.messages.filter(({ content }) => content.kind === 'verdict');
  return { h, first, correct, post, verdicts, deliver: () => deliverPost(h.deps, id) };
}

const failed = (error: unknown) => {
  if (!(error instanceof DeliveryFailure)) throw error;
};

describe('a corrected verdict whose message can’t be changed', () => {
  test.each(['edit_window_closed', 'message_not_found', 'cant_update_message'])(
    '(%s) is posted once as a new message that replaces the earlier one',
    async (code) => {
      const { h, first, post, verdicts, deliver } = await correctedVerdict();
      h.messenger.failNext({ on: 'update', kind: 'refused', code, because: 'permission' });
      expect(await deliver()).toEqual({ retryAfterMs: 0 });
      expect(await deliver()).toEqual({ done: true });
      expect(await deliver()).toEqual({ done: true });
      expect(h.messenger.calls).toEqual(['update', 'post']);
      expect(verdicts()).toHaveLength(2);
      expect(verdicts()[1]).toMatchObject({
        to: { channelId: CHANNEL.channelId },
        content: { replaces: first, verdict: { version: 2 } },
      });
      expect(await post()).toMatchObject({ state: 'sent', postedAt: verdicts()[1]?.at, replaces: first });
      expect(await h.owedKinds()).not.toContain('channel-unreachable');
    },
  );

  test('is corrected further in the new message', async () => {
    const { h, first, correct, verdicts, deliver } = await correctedVerdict();
    h.messenger.failNext({ on: 'update', kind: 'refused', code: 'edit_window_closed' });
    await deliver();
    await deliver();
    await correct();
    await deliver();
    expect(h.messenger.calls).toEqual(['update', 'post', 'update']);
    expect(verdicts()).toMatchObject([
      { updates: 0, content: { verdict: { version: 1 } } },
      { updates: 1, content: { replaces: first, verdict: { version: 3 } } },
    ]);
  });

  test('is replaced again when the new message can’t be changed either', async () => {
    const { h, correct, post, verdicts, deliver } = await correctedVerdict();
    h.messenger.failNext({ on: 'update', kind: 'refused', code: 'edit_window_closed' });
    await deliver();
    await deliver();
    await correct();
    h.messenger.failNext({ on: 'update', kind: 'refused', code: 'edit_window_closed' });
    await deliver();
    await deliver();
    expect(verdicts()).toHaveLength(3);
    expect(verdicts()[2]?.content).toMatchObject({ replaces: verdicts()[1]?.at });
    expect(await post()).toMatchObject({ state: 'sent', postedAt: verdicts()[2]?.at });
  });

  test('is looked for after an attempt without an answer, not taken for the earlier message, and never doubled', async () => {
    const { h, verdicts, deliver } = await correctedVerdict();
    h.messenger.failNext({ on: 'update', kind: 'refused', code: 'edit_window_closed' });
    await deliver();
    h.messenger.failNext({ on: 'post', kind: 'uncertain' });
    await deliver().catch(failed);
    h.messenger.failNext({ on: 'post', kind: 'uncertain', gotThrough: true });
    await deliver().catch(failed);
    expect(await deliver()).toEqual({ done: true });
    expect(h.messenger.calls).toEqual(['update', 'post', 'find', 'post', 'find', 'update']);
    expect(verdicts().map(({ updates }) => updates)).toEqual([0, 1]);
  });
});

describe('a verdict that the closed channel refused', () => {
  test('is posted once it is corrected and the channel is open again', async () => {
    const h = harness();
    const { sprint } = await h.plan(await h.setUpTeam());
    await h.drain();
    h.messenger.failNext({ on: 'post', kind: 'refused', code: 'is_archived', because: 'place-gone' });
    await h.pass('2026-11-13T17:00:00Z');
    const verdicts = () => h.messenger.messages.filter(({ content }) => content.kind === 'verdict');
    expect(verdicts()).toEqual([]);
    await reopenSprint(h.deps, ana, { sprintId: sprint.id });
    await closeSprint(h.deps, ana, { sprintId: sprint.id });
    await h.drain();
    expect(verdicts()).toMatchObject([{ content: { verdict: { version: 2 } } }]);
  });
});

describe('a message that can’t be changed and isn’t wrong', () => {
  test('doesn’t stay when it is a prompt: a new message confirms the answer', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const { sprint } = await h.plan(team, { cards: 'Tide table, 5, @Ben' });
    await h.pass('2026-11-02T09:15:00Z');
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '4' } });
    const before = h.messenger.messages.length;
    h.messenger.failNext({ on: 'update', kind: 'refused', code: 'edit_window_closed' });
    await h.drain();
    await h.drain();
    expect(h.messenger.messages.slice(before)).toMatchObject([
      { content: { kind: 'daily-prompt', prompt: { state: 'answered', answered: [{ leftPoints: 4 }] } } },
    ]);
    expect(await h.read((read) => read.countUnsentPosts())).toBe(0);
    expect(await h.owedKinds()).toEqual([]);
  });

  test('stays: a verdict found after an attempt without an answer is as it should be', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const { sprint } = await h.plan(team);
    await h.drain();
    h.set('2026-11-12T10:00:00Z');
    await closeSprint(h.deps, ana, { sprintId: sprint.id });
    const { id } = (await h.read((read) => read.postAbout(sprint.id, 'verdict'))) as Post;
    h.messenger.failNext({ on: 'post', kind: 'uncertain', gotThrough: true });
    await deliverPost(h.deps, id).catch(failed);
    h.messenger.failNext({ on: 'update', kind: 'refused', code: 'edit_window_closed' });
    expect(await deliverPost(h.deps, id)).toEqual({ done: true });
    expect(h.messenger.messages.filter(({ content }) => content.kind === 'verdict')).toHaveLength(1);
  });
});
