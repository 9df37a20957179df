import { sql } from 'drizzle-orm';
import { describe, expect, test, vi } from 'vitest';
import { closeSprint } from '../../../src/app/closing/end-sprint.ts';
import { deliverPost } from '../../../src/app/posting/deliver.ts';
import { DeliveryFailure } from '../../../src/app/posting/delivery-failure.ts';
import type { Post } from '../../../src/app/posting/posts.ts';
import { actorOf, type Harness, harnessForEach } from '../../support/app-harness.ts';
import { rowsOf } from '../../support/rows-of.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');

/** A prompt for Ben on the sprint's first day, recorded and not delivered yet. */
async function owedPrompt() {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team, { cards: 'Tide table, 5, @Ben' });
  await h.drain();
  h.messenger.messages.length = 0;
  h.messenger.calls.length = 0;
  h.set('2026-11-02T09:15:00Z');
  await h.tick();
  const [postId] = (await h.owedPostIds()) as [string];
  return { h, sprint, postId, deliver: () => deliverPost(h.deps, postId) };
}

function post(h: Harness, postId: string): Promise<Post> {
  return h.read(async (read) => (await read.postById(postId)) as Post);
}

/** As if so many seconds had passed for the database, whose own clock decides how long an attempt takes. */
function age(h: Harness, seconds: number) {
  return h.database.session.execute(
    sql`update loadline.posts set sending_since = sending_since - make_interval(secs => ${seconds})`,
  );
}

function failureOf(attempt: Promise<unknown>): Promise<unknown> {
  return attempt.then(
    (outcome) => outcome,
    (error: unknown) => (error instanceof DeliveryFailure ? error.kind : error),
  );
}

describe('a delivery that goes well', () => {
  test('posts once, with the post’s id as the key, and remembers where it is', async () => {
    const { h, postId, deliver } = await owedPrompt();
    expect(await deliver()).toEqual({ done: true });
    expect(await deliver()).toEqual({ done: true });
    expect(h.messenger.calls).toEqual(['post']);
    const [message] = h.messenger.messages;
    expect(message?.key).toBe(postId);
    expect(await post(h, postId)).toMatchObject({ state: 'sent', postedAt: message?.at, sentVersion: 1 });
  });

  test('updates in place when the post should be rebuilt', async () => {
    const { h, sprint, deliver } = await owedPrompt();
    await deliver();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '4' } });
    await deliver();
    expect(h.messenger.calls).toEqual(['post', 'update']);
    expect(h.messenger.messages).toMatchObject([{ updates: 1, content: { prompt: { state: 'answered' } } }]);
  });

  test('of a post that does not exist has nothing to do', async () => {
    const { h } = await owedPrompt();
    expect(await deliverPost(h.deps, 'no such post')).toEqual({ done: true });
    expect(h.messenger.calls).toEqual([]);
  });
});

describe('in a workspace that removed the bot', () => {
  test('a post stays as it is, and is not tried again by itself', async () => {
    const { h, postId, deliver } = await owedPrompt();
    h.messenger.failNext({ on: 'post', kind: 'not-installed' });
    expect(await deliver()).toEqual({ done: true });
    expect(await post(h, postId)).toMatchObject({ state: 'pending', sentVersion: 0 });
    expect(await deliver()).toEqual({ done: true });
    expect(await post(h, postId)).toMatchObject({ state: 'sent' });
  });

  test('a post that may or may not have been sent is looked for once the bot is back', async () => {
    const { h, postId, deliver } = await owedPrompt();
    h.messenger.failNext({ on: 'post', kind: 'uncertain', gotThrough: true });
    await failureOf(deliver());
    h.messenger.failNext({ on: 'find', kind: 'not-installed' });
    expect(await deliver()).toEqual({ done: true });
    expect(await post(h, postId)).toMatchObject({ state: 'uncertain' });
    expect(await deliver()).toEqual({ done: true });
    expect(h.messenger.messages).toHaveLength(1);
  });
});

describe('an attempt that ended without an answer', () => {
  test('is looked for, and the message found is updated rather than sent again', async () => {
    const { h, postId, deliver } = await owedPrompt();
    h.messenger.failNext({ on: 'post', kind: 'uncertain', gotThrough: true });
    expect(await failureOf(deliver())).toBe('uncertain');
    expect(await post(h, postId)).toMatchObject({ state: 'uncertain', postedAt: undefined });
    expect(await deliver()).toEqual({ done: true });
    expect(h.messenger.calls).toEqual(['post', 'find', 'update']);
    expect(h.messenger.messages).toHaveLength(1);
    expect(await post(h, postId)).toMatchObject({ state: 'sent', postedAt: h.messenger.messages[0]?.at });
  });

  test('is sent again when it is not found', async () => {
    const { h, deliver } = await owedPrompt();
    h.messenger.failNext({ on: 'post', kind: 'uncertain' });
    expect(await failureOf(deliver())).toBe('uncertain');
    expect(await deliver()).toEqual({ done: true });
    expect(h.messenger.calls).toEqual(['post', 'find', 'post']);
    expect(h.messenger.messages).toHaveLength(1);
  });

  test.each(['rate-limited', 'not-sent', 'uncertain'] as const)(
    'is looked for again when the looking was %s, and never doubled',
    async (kind) => {
      const { h, deliver } = await owedPrompt();
      h.messenger.failNext({ on: 'post', kind: 'uncertain', gotThrough: true });
      await failureOf(deliver());
      h.messenger.failNext({ on: 'find', kind });
      await failureOf(deliver());
      expect(await deliver()).toEqual({ done: true });
      expect(h.messenger.calls).toEqual(['post', 'find', 'find', 'update']);
      expect(h.messenger.messages).toHaveLength(1);
    },
  );

  test.each(['rate-limited', 'not-sent', 'uncertain'] as const)(
    'once found is only updated from then on, though the update was %s',
    async (kind) => {
      const { h, deliver } = await owedPrompt();
      h.messenger.failNext({ on: 'post', kind: 'uncertain', gotThrough: true });
      await failureOf(deliver());
      h.messenger.failNext({ on: 'update', kind });
      await failureOf(deliver());
      expect(await deliver()).toEqual({ done: true });
      expect(h.messenger.calls).toEqual(['post', 'find', 'update', 'update']);
      expect(h.messenger.messages).toHaveLength(1);
    },
  );

  test('because its process died is left alone for a minute, then looked for', async () => {
    const { h, postId, deliver } = await owedPrompt();
    const died = Promise.withResolvers<void>();
    h.messenger.meanwhile = () => {
      died.resolve();
      return new Promise(() => {});
    };
    void deliver();
    await died.promise;
    expect((await post(h, postId)).state).toBe('sending');
    expect(await deliver()).toEqual({ retryAfterMs: 2_000 });
    await age(h, 61);
    expect(await deliver()).toEqual({ done: true });
    expect(h.messenger.calls).toEqual(['post', 'find', 'post']);
  });

  test('because of a defect is looked for at once, for nobody is at it any more', async () => {
    const { h, postId, deliver } = await owedPrompt();
    h.messenger.meanwhile = () => Promise.reject(new Error('a defect'));
    await expect(deliver()).rejects.toThrow('a defect');
    expect((await post(h, postId)).state).toBe('uncertain');
    expect(await deliver()).toEqual({ done: true });
    expect(h.messenger.calls).toEqual(['post', 'find', 'post']);
  });
});

describe('an attempt that takes too long', () => {
  test('sends no more once others may take the post over', async () => {
    const { h, deliver } = await owedPrompt();
    const asked: boolean[] = [];
    const { messenger } = h;
    const slow = {
      ...h.deps,
      messenger: {
        isShared: messenger.isShared.bind(messenger),
        find: messenger.find.bind(messenger),
        update: messenger.update.bind(messenger),
        removeOwn: messenger.removeOwn.bind(messenger),
        post: async (...given: Parameters<typeof messenger.post>) => {
          const maySend = given[5] as () => boolean;
          asked.push(maySend());
          const nowMs = performance.now() + 26_000;
          const later = vi.spyOn(performance, 'now').mockReturnValue(nowMs);
          asked.push(maySend());
          later.mockRestore();
          return messenger.post(...given);
        },
      },
    };
    const [postId] = (await h.owedPostIds()) as [string];
    await deliverPost(slow, postId);
    expect(asked).toEqual([true, false]);
    expect(await deliver()).toEqual({ done: true });
  });
});

describe('a platform that does not take the post', () => {
  test('because of its rate limit is tried again when it says', async () => {
    const { h, postId, deliver } = await owedPrompt();
    h.messenger.failNext({ on: 'post', kind: 'rate-limited', retryAfterMs: 7_000 });
    expect(await deliver()).toEqual({ retryAfterMs: 7_000 });
    expect(await post(h, postId)).toMatchObject({ state: 'pending' });
    expect(await deliver()).toEqual({ done: true });
    expect(h.messenger.calls).toEqual(['post', 'post']);
  });

  test('and says not when is tried again after half a minute', async () => {
    const { h, deliver } = await owedPrompt();
    h.messenger.failNext({ on: 'post', kind: 'rate-limited' });
    expect(await deliver()).toEqual({ retryAfterMs: 30_000 });
  });

  test('because it cannot be reached is tried again by the queue, without being looked for', async () => {
    const { h, deliver } = await owedPrompt();
    h.messenger.failNext({ on: 'post', kind: 'not-sent' });
    expect(await failureOf(deliver())).toBe('not-sent');
    expect(await deliver()).toEqual({ done: true });
    expect(h.messenger.calls).toEqual(['post', 'post']);
  });

  test('ever is left in peace, and the reason noted', async () => {
    const { h, postId, deliver } = await owedPrompt();
    h.messenger.failNext({ on: 'post', kind: 'refused' });
    expect(await deliver()).toEqual({ done: true, refusedWith: 'refused_example' });
    expect(await deliver()).toEqual({ done: true });
    expect(h.messenger.calls).toEqual(['post']);
    const noted = await rowsOf(
      h.database,
      sql`select state, last_error from loadline.posts where id = ${postId}`,
    );
    expect(noted).toEqual([{ state: 'dead', last_error: 'refused_example' }]);
  });

  test('a message that was posted keeps its place when an update fails', async () => {
    const { h, sprint, postId, deliver } = await owedPrompt();
    await deliver();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '4' } });
    h.messenger.failNext({ on: 'update', kind: 'rate-limited', retryAfterMs: 1_000 });
    expect(await deliver()).toEqual({ retryAfterMs: 1_000 });
    expect(await post(h, postId)).toMatchObject({ state: 'sent', sentVersion: 1, wantedVersion: 2 });
    await deliver();
    expect(h.messenger.calls).toEqual(['post', 'update', 'update']);
    expect(await post(h, postId)).toMatchObject({ sentVersion: 2 });
  });
});

describe('several at the same post', () => {
  test('do not send it twice: the second is told to come back', async () => {
    const { h, deliver } = await owedPrompt();
    let second: unknown;
    h.messenger.meanwhile = async () => {
      second = await deliver();
    };
    expect(await deliver()).toEqual({ done: true });
    expect(second).toEqual({ retryAfterMs: 2_000 });
    expect(h.messenger.messages).toHaveLength(1);
  });

  test('an answer while the prompt is being sent is shown by an update afterwards', async () => {
    const { h, sprint, postId, deliver } = await owedPrompt();
    h.messenger.meanwhile = async () => {
      await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '4' } });
    };
    await deliver();
    expect(h.messenger.messages).toMatchObject([{ content: { prompt: { state: 'listed' } } }]);
    expect(await post(h, postId)).toMatchObject({ sentVersion: 1, wantedVersion: 2 });
    await deliver();
    expect(h.messenger.messages).toMatchObject([{ updates: 1, content: { prompt: { state: 'answered' } } }]);
  });
});

describe('a prompt that has been overtaken', () => {
  test('by the next day is skipped for good', async () => {
    const { h, postId, deliver } = await owedPrompt();
    h.set('2026-11-03T00:00:00Z');
    expect(await deliver()).toEqual({ done: true });
    expect((await post(h, postId)).state).toBe('skipped');
    h.set('2026-11-02T10:00:00Z');
    expect(await deliver()).toEqual({ done: true });
    expect(h.messenger.calls).toEqual([]);
  });

  test('while nobody knew whether it had got through is looked for, and brought up to date where it is', async () => {
    const { h, postId, deliver } = await owedPrompt();
    h.messenger.failNext({ on: 'post', kind: 'uncertain', gotThrough: true });
    await failureOf(deliver());
    h.set('2026-11-03T00:00:00Z');
    expect(await deliver()).toEqual({ retryAfterMs: 2_000 });
    expect(await deliver()).toEqual({ done: true });
    expect(h.messenger.calls).toEqual(['post', 'find', 'update']);
    expect(await post(h, postId)).toMatchObject({ state: 'sent', sentVersion: 1 });
  });

  test('while nobody knew whether it had got through is skipped when it did not', async () => {
    const { h, postId, deliver } = await owedPrompt();
    h.messenger.failNext({ on: 'post', kind: 'uncertain' });
    await failureOf(deliver());
    h.set('2026-11-03T00:00:00Z');
    expect(await deliver()).toEqual({ done: true });
    expect(h.messenger.calls).toEqual(['post', 'find']);
    expect((await post(h, postId)).state).toBe('skipped');
  });

  test('by the end of the sprint is skipped', async () => {
    const { h, sprint, postId, deliver } = await owedPrompt();
    await closeSprint(h.deps, actorOf('ana'), { sprintId: sprint.id });
    await deliver();
    expect((await post(h, postId)).state).toBe('skipped');
  });

  test('by an answer goes out anyway and shows the answer, so that it can be corrected there', async () => {
    const { h, sprint, deliver } = await owedPrompt();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '4' } });
    await deliver();
    expect(h.messenger.calls).toEqual(['post']);
    expect(h.messenger.messages).toMatchObject([{ content: { prompt: { state: 'answered' } } }]);
  });

  test('that was posted is still brought up to date on a later day', async () => {
    const { h, sprint, deliver } = await owedPrompt();
    await deliver();
    h.set('2026-11-04T10:00:00Z');
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '4' } });
    await deliver();
    expect(h.messenger.messages).toMatchObject([
      { updates: 1, content: { prompt: { day: '2026-11-02', state: 'answered' } } },
    ]);
  });
});
