/** Ordered faults: what a delivery must survive. */
import { ErrorCode } from '@slack/web-api';
import { expect, test } from 'vitest';
import type { Fault } from '../../../src/rehearsal/stand-in/stand-in-options.ts';
import { refusal, type Scene, startScene } from './fixture.ts';

async function withFault(fault: Fault, check: (scene: Scene) => Promise<void>): Promise<void> {
  let pending: Fault | undefined = fault;
  const scene = await startScene({
    faultFor: (method) => {
      const now = method === 'chat.postMessage' ? pending : undefined;
      if (now) pending = undefined;
      return now;
    },
  });
  try {
    await check(scene);
  } finally {
    await scene.stop();
  }
}
const post = (scene: Scene) => scene.client.chat.postMessage({ channel: 'C1TEAM0000', text: 'a' });

test.each<['before' | 'after', number]>([
  ['before', 0],
  ['after', 1],
])(
  'a connection dropped %s the call leaves %s posts, and the next call works',
  async (dropConnection, posts) => {
    await withFault({ dropConnection }, async (scene) => {
      await expect(post(scene)).rejects.toMatchObject({ code: ErrorCode.RequestError });
      expect(scene.standIn.allPosts()).toHaveLength(posts);
      expect((await post(scene)).ok).toBe(true);
    });
  },
);

test('an ordered status comes back and the call is not applied', async () => {
  await withFault({ status: 500 }, async (scene) => {
    await expect(post(scene)).rejects.toMatchObject({ code: ErrorCode.HTTPError, statusCode: 500 });
    expect(scene.standIn.allPosts()).toEqual([]);
  });
});

test('an ordered answer comes back and the call is not applied', async () => {
  await withFault({ body: { ok: false, error: 'fatal_error' } }, async (scene) => {
    expect((await refusal(post(scene))).error).toBe('fatal_error');
    expect(scene.standIn.allPosts()).toEqual([]);
  });
});

test('an ordered limit carries its Retry-After', async () => {
  await withFault({ status: 429, headers: { 'retry-after': '7' } }, async (scene) => {
    await expect(post(scene)).rejects.toMatchObject({ code: ErrorCode.RateLimitedError, retryAfter: 7 });
  });
});
