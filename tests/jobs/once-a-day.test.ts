import { expect, it } from 'vitest';
import { onceADay } from '../../src/jobs/once-a-day.ts';

/** A heap of work, and ticks at given instants. */
function heapOf(...heap: number[]) {
  let now = new Date('2026-11-02T23:58:00Z');
  let batches = 0;
  const tick = onceADay(
    () => now,
    async () => {
      batches += 1;
      return heap.shift() ?? 0;
    },
  );
  return {
    batches: () => batches,
    at: async (instant: string): Promise<number> => {
      now = new Date(instant);
      return tick();
    },
  };
}

it('does all batches of a day, and then no more until the next day', async () => {
  const heap = heapOf(20, 7);
  expect(await heap.at('2026-11-02T23:58:00Z')).toBe(27);
  expect(await heap.at('2026-11-02T23:59:00Z')).toBe(0);
  expect(heap.batches()).toBe(3);
  await heap.at('2026-11-03T00:00:00Z');
  expect(heap.batches()).toBe(4);
});

it('leaves what is more than ten batches to the next tick', async () => {
  const heap = heapOf(...Array.from({ length: 12 }, () => 20));
  expect(await heap.at('2026-11-02T09:00:00Z')).toBe(200);
  expect(await heap.at('2026-11-02T09:01:00Z')).toBe(40);
  expect(await heap.at('2026-11-02T09:02:00Z')).toBe(0);
});

it('tries again at the next tick when a batch fails', async () => {
  let fails = true;
  const tick = onceADay(
    () => new Date('2026-11-02T09:00:00Z'),
    async () => {
      if (fails) throw new Error('the disk is full');
      return 0;
    },
  );
  await expect(tick()).rejects.toThrow('the disk is full');
  fails = false;
  expect(await tick()).toBe(0);
});
