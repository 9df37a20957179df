import { describe, expect, test } from 'vitest';
import { closeSprint, reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import { deliverPost } from '../../../src/app/posting/deliver.ts';
import type { Post, Recipient } from '../../../src/app/posting/posts.ts';
import { actorOf, CHANNEL, harnessForEach } from '../../support/app-harness.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');
const CLOSING = '2026-11-13T17:00:00Z';

async function running() {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team);
  await h.drain();
  const verdict = () => h.messenger.messages.find(({ content }) => content.kind === 'verdict');
  const parts = () => h.messenger.messages.filter(({ to }) => threadOf(to) !== undefined);
  /** What is delivered may owe more. */
  const settle = async () => {
    for (let owed = await h.owedPostIds(); owed.length > 0; owed = await h.owedPostIds()) await h.drain();
  };
  /** Closes the sprint with the verdict still to be sent. */
  const close = async () => {
    h.set(CLOSING);
    await h.tick();
    const { id } = (await h.read((read) => read.postAbout(sprint.id, 'verdict'))) as Post;
    return () => deliverPost(h.deps, id);
  };
  return { h, sprint, verdict, parts, settle, close };
}

function threadOf(to: Recipient): string | undefined {
  return 'channelId' in to ? to.threadTs : undefined;
}

describe('the thread of a verdict', () => {
  test('gets numbers, cards and notes once the verdict is out, each once', async () => {
    const { h, verdict, parts, settle } = await running();
    await h.pass(CLOSING);
    await settle();
    expect(
      parts()
        .map(({ content }) => content.kind)
        .sort(),
    ).toEqual(['verdict-cards', 'verdict-notes', 'verdict-numbers']);
    for (const { to } of parts())
      expect(to).toEqual({ channelId: CHANNEL.channelId, threadTs: verdict()?.at.ts });
  });

  test('waits for the verdict: nothing is owed while that isn’t out', async () => {
    const { h, sprint, parts, settle, close } = await running();
    const deliver = await close();
    h.messenger.failNext({ on: 'post', kind: 'not-sent' });
    await expect(deliver()).rejects.toThrow('not-sent');
    expect(await h.read((read) => read.postAbout(sprint.id, 'verdict-numbers'))).toBeUndefined();
    await settle();
    expect(parts()).toHaveLength(3);
  });

  test('is there once when nobody knew whether the verdict had got through', async () => {
    const { h, verdict, parts, settle, close } = await running();
    const deliver = await close();
    h.messenger.failNext({ on: 'post', kind: 'uncertain', gotThrough: true });
    await expect(deliver()).rejects.toThrow('uncertain');
    await settle();
    expect(h.messenger.messages.filter(({ content }) => content.kind === 'verdict')).toHaveLength(1);
    expect(parts().map(({ to }) => threadOf(to))).toEqual(Array(3).fill(verdict()?.at.ts));
  });

  test('is brought up to date in place when the sprint is corrected', async () => {
    const { h, sprint, parts, settle } = await running();
    await h.pass(CLOSING);
    await settle();
    await reopenSprint(h.deps, ana, { sprintId: sprint.id });
    await closeSprint(h.deps, ana, { sprintId: sprint.id });
    await settle();
    expect(parts()).toHaveLength(3);
    for (const { content, updates } of parts()) {
      expect(content).toMatchObject({ verdict: { version: 2 } });
      expect(updates).toBeGreaterThan(0);
    }
  });

  test('leaves out the cards while every card went as planned, and adds them when a correction says otherwise', async () => {
    const { h, sprint, parts, settle } = await running();
    h.set('2026-11-13T10:00:00Z');
    await h.answer('ben', sprint.id, '2026-11-13', { 1: { left: '0' }, 3: { left: '0' } });
    await h.answer('chi', sprint.id, '2026-11-13', { 2: { left: '0' } });
    await h.pass(CLOSING);
    await settle();
    const kinds = () => parts().map(({ content }) => content.kind);
    expect(kinds()).not.toContain('verdict-cards');
    await reopenSprint(h.deps, ana, { sprintId: sprint.id });
    await h.answer('ben', sprint.id, '2026-11-13', { 1: { left: '1' } });
    await closeSprint(h.deps, ana, { sprintId: sprint.id });
    await settle();
    expect(kinds()).toContain('verdict-cards');
  });

  test('goes below the new message when the verdict had to be sent again', async () => {
    const { h, sprint, parts, settle } = await running();
    await h.pass(CLOSING);
    await settle();
    await reopenSprint(h.deps, ana, { sprintId: sprint.id });
    await closeSprint(h.deps, ana, { sprintId: sprint.id });
    h.messenger.failNext({
      on: 'update',
      kind: 'refused',
      code: 'edit_window_closed',
      because: 'permission',
    });
    await settle();
    const [, second] = h.messenger.messages.filter(({ content }) => content.kind === 'verdict');
    expect(parts().filter(({ to }) => threadOf(to) === second?.at.ts)).toHaveLength(3);
  });
});
