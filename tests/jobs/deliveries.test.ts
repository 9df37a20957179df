import { describe, expect, test } from 'vitest';
import type { DeliveryOutcome } from '../../src/app/deliver.ts';
import { deliveryHandler } from '../../src/jobs/deliveries.ts';

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
});
