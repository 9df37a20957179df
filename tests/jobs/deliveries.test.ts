import { describe, expect, test } from 'vitest';
import type { DeliveryOutcome } from '../../src/app/posting/deliver.ts';
import { deliveryHandler } from '../../src/jobs/deliveries.ts';
import { currentReference, withReference } from '../../src/reference.ts';
import { logCatcher } from '../slack/support/log-catcher.ts';

function withLog(deliver: (postId: string) => Promise<DeliveryOutcome>) {
  const lines: { level: string; message: string; details: object }[] = [];
  const writer = (level: string) => (details: Record<string, unknown>, message: string) => {
    lines.push({ level, message, details });
  };
  return { lines, handle: deliveryHandler(deliver, { info: writer('info'), error: writer('error') }) };
}

describe('the worker’s handler', () => {
  test.each<DeliveryOutcome>([{ done: true }, { retryAfterMs: 2_000 }])(
    'hands the outcome %j on to the queue and says nothing',
    async (outcome) => {
      const delivered: string[] = [];
      const { lines, handle } = withLog(async (postId) => {
        delivered.push(postId);
        return outcome;
      });
      expect(await handle('post-1', { isLast: false })).toEqual(outcome);
      expect([delivered, lines]).toEqual([['post-1'], []]);
    },
  );

  test.each([
    [false, 'post not delivered yet; it is tried again'],
    [true, 'post given up: it failed for the last time'],
  ])('notes a failure (the last: %s) and hands it on, so that the queue knows', async (isLast, message) => {
    const failure = new Error('timed out');
    const { lines, handle } = withLog(() => Promise.reject(failure));
    await expect(handle('post-1', { isLast })).rejects.toBe(failure);
    expect(lines).toEqual([{ level: 'error', message, details: { err: failure, postId: 'post-1' } }]);
  });

  test('tells the operator of a post that the platform will never take', async () => {
    const { lines, handle } = withLog(async () => ({ done: true, refusedWith: 'is_archived' }));
    await handle('post-1', { isLast: false });
    expect(lines).toEqual([
      {
        level: 'error',
        message: 'post set aside: the platform will never take it',
        details: { postId: 'post-1', code: 'is_archived' },
      },
    ]);
  });

  test('counts what was put off, what is tried again and what was given up', async () => {
    const counted: string[] = [];
    const meter = {
      deliveryRetried: (reason: string) => void counted.push(reason),
      deliveryGivenUp: () => void counted.push('given up'),
    };
    const outcomes: (() => Promise<DeliveryOutcome>)[] = [
      async () => ({ done: true }),
      async () => ({ retryAfterMs: 2_000 }),
      () => Promise.reject(new Error('timed out')),
      () => Promise.reject(new Error('timed out')),
    ];
    const silent = { info: () => undefined, error: () => undefined };
    const handle = deliveryHandler(
      () => (outcomes.shift() as () => Promise<DeliveryOutcome>)(),
      silent,
      meter,
    );
    await handle('post-1', { isLast: false });
    await handle('post-1', { isLast: false });
    await handle('post-1', { isLast: false }).catch(() => undefined);
    await handle('post-1', { isLast: true }).catch(() => undefined);
    expect(counted).toEqual(['postponed', 'failed', 'given up']);
  });

  test('gives each delivery a reference of its own, which is in its log lines', async () => {
    const { logger, entries } = logCatcher();
    const handle = deliveryHandler(() => Promise.reject(new Error('timed out')), logger);
    await handle('post-1', { isLast: false }).catch(() => undefined);
    // What a request sets off in the background is work of its own.
    await withReference(() => handle('post-2', { isLast: false })).catch(() => undefined);
    const outer = await withReference(async () => {
      await handle('post-3', { isLast: false }).catch(() => undefined);
      return currentReference();
    });
    const references = entries().map(({ reference }) => reference);
    expect(new Set([...references, outer]).size).toBe(4);
    expect(references).not.toContain(undefined);
  });
});
