import { describe, expect, it } from 'vitest';
import { RunningWork } from '../../../src/slack/slack-app.ts';

describe('RunningWork', () => {
  it('is settled when nothing runs', async () => {
    expect(await new RunningWork().settled(0)).toBe(true);
  });

  it('waits for work in hand, and for work that began meanwhile', async () => {
    const running = new RunningWork();
    const ended: string[] = [];
    const first = Promise.withResolvers<void>();
    const second = Promise.withResolvers<void>();
    void running.track(async () => {
      await first.promise;
      ended.push('first');
      void running.track(async () => {
        await second.promise;
        ended.push('second');
      });
    });
    const settled = running.settled(10_000);
    first.resolve();
    second.resolve();
    expect(await settled).toBe(true);
    expect(ended).toEqual(['first', 'second']);
  });

  it('gives up after the limit', async () => {
    const running = new RunningWork();
    const endless = Promise.withResolvers<void>();
    const work = running.track(() => endless.promise);
    expect(await running.settled(1)).toBe(false);
    endless.resolve();
    await work;
  });

  it('lets the caller have the error and counts the work as ended', async () => {
    const running = new RunningWork();
    await expect(running.track(() => Promise.reject(new Error('no')))).rejects.toThrow('no');
    expect(running.count).toBe(0);
  });
});
