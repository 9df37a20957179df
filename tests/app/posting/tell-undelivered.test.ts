/** The facilitators hear of a post that can't be delivered. No published source: our own rule. */
import { describe, expect, test } from 'vitest';
import { deliverPost } from '../../../src/app/posting/deliver.ts';
import { CHANNEL, type Harness, harnessForEach, PEOPLE } from '../../support/app-harness.ts';

const harness = harnessForEach('2026-10-30T12:00:00Z');

const ARCHIVED = { on: 'post', kind: 'refused', code: 'is_archived', because: 'place-gone' } as const;
const FORBIDDEN = { on: 'post', kind: 'refused', code: 'restricted_action', because: 'permission' } as const;

function toldTo(h: Harness, who: 'ana' | 'ben' | 'chi') {
  return h.messagesTo(who).filter(({ kind }) => kind.endsWith('-unreachable'));
}

/** A plan that is recorded, and not posted yet. */
async function owedPlan(): Promise<Harness> {
  const h = harness();
  await h.plan(await h.setUpTeam());
  return h;
}

describe('a post that the channel refuses', () => {
  test('is told to the facilitator, with the cause, and to nobody else', async () => {
    const h = await owedPlan();
    h.messenger.failNext(ARCHIVED);
    await h.drain();
    await h.drain();
    expect(toldTo(h, 'ana')).toMatchObject([
      { kind: 'channel-unreachable', team: { name: 'Tugboats' }, cause: 'place-gone' },
    ]);
    expect([toldTo(h, 'ben'), toldTo(h, 'chi'), h.messagesTo(CHANNEL)]).toEqual([[], [], []]);
  });

  test('is told also when the process dies before it has noted the refusal', async () => {
    const h = await owedPlan();
    const [planId = ''] = await h.owedPostIds();
    h.messenger.failNext(ARCHIVED);
    const { store } = h.deps;
    const updatePost = () => Promise.reject(new Error('the process died'));
    const dying = { ...h.deps, store: { ...store, single: { ...store.single, updatePost } } };
    await expect(deliverPost(dying, planId)).rejects.toThrow('the process died');
    expect(await h.owedKinds()).toContain('channel-unreachable');
  });

  test('is told once for each cause in a week, however many posts fail, and again in the next', async () => {
    const h = await owedPlan();
    const refused = async (failure: typeof ARCHIVED | typeof FORBIDDEN, now: string) => {
      h.set(now);
      const [postId = ''] = await h.owedPostIds();
      h.messenger.failNext(failure);
      await deliverPost(h.deps, postId);
      await h.write((tx) => tx.write.posts.update(postId, { state: 'pending' }));
      return (await h.owedKinds()).filter((kind) => kind === 'channel-unreachable').length;
    };
    expect(await refused(ARCHIVED, '2026-10-30T12:00:00Z')).toBe(1);
    expect(await refused(ARCHIVED, '2026-10-30T13:00:00Z')).toBe(1);
    expect(await refused(FORBIDDEN, '2026-10-30T14:00:00Z')).toBe(2);
    expect(await refused(ARCHIVED, '2026-11-06T12:00:00Z')).toBe(3);
  });
});

describe('a prompt that a member can not be sent', () => {
  test('is told to the facilitator, who is told who is not asked', async () => {
    const h = await owedPlan();
    await h.drain();
    h.set('2026-11-02T09:15:00Z');
    await h.tick();
    for (const id of await h.owedPostIds()) {
      const post = await h.read((read) => read.postById(id));
      if (post?.subject.userId === PEOPLE.ben) h.messenger.failNext(FORBIDDEN);
      await deliverPost(h.deps, id);
    }
    await h.drain();
    expect(toldTo(h, 'ana')).toMatchObject([
      { kind: 'member-unreachable', userId: PEOPLE.ben, cause: 'permission' },
    ]);
    expect(toldTo(h, 'ben')).toEqual([]);
  });
});

describe('a post whose tries fail', () => {
  test.each([
    [false, []],
    [true, [{ kind: 'channel-unreachable', cause: 'tries-failed' }]],
  ])('is told when the last one failed: %s', async (isLast, told) => {
    const h = await owedPlan();
    const [planId = ''] = await h.owedPostIds();
    h.messenger.failNext({ on: 'post', kind: 'not-sent' });
    await expect(deliverPost(h.deps, planId, isLast)).rejects.toMatchObject({ kind: 'not-sent' });
    await h.drain();
    expect(toldTo(h, 'ana')).toMatchObject(told);
  });
});

test('what can not be told either is left at that', async () => {
  const h = await owedPlan();
  h.messenger.failNext(ARCHIVED);
  await h.drain();
  h.messenger.failNext(FORBIDDEN);
  await h.drain();
  expect(await h.owedPostIds()).toEqual([]);
  expect(toldTo(h, 'ana')).toEqual([]);
});
