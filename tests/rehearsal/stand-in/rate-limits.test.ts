/** Rates: docs.slack.dev/apis/web-api/rate-limits. Bursts are the stand-in's own reading. */
import { ErrorCode } from '@slack/web-api';
import { describe, expect, test } from 'vitest';
import { limitsClock, RateLimits, type Tier } from '../../../src/rehearsal/stand-in/rate-limits.ts';
import { many, startScene, TestClock } from './fixture.ts';

describe('rate limits', () => {
  test.each<[Tier, number, number]>([
    [1, 1, 60],
    [2, 20, 3],
    [3, 50, 2],
    [4, 100, 1],
  ])('tier %s allows %s calls at once and then asks to wait', (tier, calls, waitSeconds) => {
    const clock = new TestClock(0);
    const limits = new RateLimits(clock.nowMs);
    expect(many(calls, () => limits.take('a', tier))).toEqual(many(calls, () => undefined));
    expect(limits.take('a', tier)).toBe(waitSeconds);
    expect(limits.take('b', tier)).toBeUndefined();
    clock.ms += waitSeconds * 1000;
    expect(limits.take('a', tier)).toBeUndefined();
  });

  test('posts to one channel go on at one a second after a short burst, other channels are not held up', () => {
    const clock = new TestClock(0);
    const limits = new RateLimits(clock.nowMs);
    const post = (channel: string) => limits.take('chat.postMessage', 'post', channel);
    expect(many(5, () => post('C1'))).toEqual(many(5, () => undefined));
    expect(post('C1')).toBe(1);
    expect(post('C2')).toBeUndefined();
    clock.ms += 999;
    expect(post('C1')).toBe(1);
    clock.ms += 1;
    expect(post('C1')).toBeUndefined();
    expect(post('C1')).toBe(1);
  });

  test('all posts together go on at 300 a minute', () => {
    const limits = new RateLimits(() => 0);
    const waits = many(301, (index) => limits.take('chat.postMessage', 'post', `C${index}`));
    expect(waits.filter((one) => one !== undefined)).toEqual([1]);
  });

  test('a refused call does not count', () => {
    const clock = new TestClock(0);
    const limits = new RateLimits(clock.nowMs);
    limits.take('a', 1);
    expect(many(3, () => limits.take('a', 1))).toEqual([60, 60, 60]);
  });

  test('the clock of the limits moves on by the larger of real and simulated time, never back', () => {
    const [real, simulated] = [new TestClock(0), new TestClock(0)];
    const now = limitsClock(real.nowMs, simulated.nowMs);
    real.ms += 500;
    expect(now()).toBe(500);
    simulated.ms += 86_400_000;
    real.ms += 10;
    expect(now()).toBe(86_400_500);
    simulated.ms -= 86_400_000;
    expect(now()).toBe(86_400_500);
  });
});

test('a call above the limit gets status 429 and Retry-After, which the real client understands', async () => {
  const clock = new TestClock(0);
  const scene = await startScene({ rateLimits: 'enforced', realNowMs: clock.nowMs });
  const post = () => scene.client.chat.postMessage({ channel: 'U1ANA0000', text: 'a' });
  for (const _ of many(5, () => 0)) await post();
  await expect(post()).rejects.toMatchObject({ code: ErrorCode.RateLimitedError, retryAfter: 1 });
  // The same conversation by its own id shares the limit.
  const byId = scene.client.chat.postMessage({ channel: 'D1ANA0000', text: 'a' });
  await expect(byId).rejects.toMatchObject({ retryAfter: 1 });
  expect((await scene.client.users.info({ user: 'U1ANA0000' })).ok).toBe(true);
  scene.calendar.ms += 3_600_000;
  expect((await post()).ok).toBe(true);
  expect(scene.standIn.allPosts()).toHaveLength(6);
  await scene.stop();
});

test('limits can be widened', async () => {
  const clock = new TestClock(0);
  const scene = await startScene({ rateLimits: { scale: 2 }, realNowMs: clock.nowMs });
  const post = () => scene.client.chat.postMessage({ channel: 'C1TEAM0000', text: 'a' });
  for (const _ of many(10, () => 0)) await post();
  await expect(post()).rejects.toMatchObject({ code: ErrorCode.RateLimitedError });
  await scene.stop();
});
