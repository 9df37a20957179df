import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { JobLog, RunningClock } from '../../src/jobs/clock.ts';
import { onceADay, startClock } from '../../src/jobs/clock.ts';

const MINUTE_MS = 60_000;

let clock: RunningClock | undefined;

beforeEach(() => {
  vi.useFakeTimers({ now: new Date('2026-11-02T09:14:30Z') });
});

afterEach(async () => {
  await clock?.stop();
  clock = undefined;
  vi.useRealTimers();
});

function recordingLog(): JobLog & { readonly lines: { level: string; message: string; details: object }[] } {
  const lines: { level: string; message: string; details: object }[] = [];
  const writer =
    (level: string) =>
    (details: Record<string, unknown>, message: string): void => {
      lines.push({ level, message, details });
    };
  return { lines, info: writer('info'), error: writer('error') };
}

/** A tick whose ends the test decides. */
function controlledTick() {
  const open: { resolve: (served: number) => void; reject: (error: Error) => void }[] = [];
  let begun = 0;
  const tick = (): Promise<number> => {
    begun += 1;
    return new Promise((resolve, reject) => {
      open.push({ resolve, reject });
    });
  };
  return {
    tick,
    begun: () => begun,
    end: (served = 0) => open.shift()?.resolve(served),
    fail: (error: Error) => open.shift()?.reject(error),
  };
}

describe('the clock', () => {
  test('ticks at once when it starts, then at every full minute', async () => {
    const at: string[] = [];
    clock = startClock(async () => {
      at.push(new Date().toISOString().slice(11, 16));
      return 0;
    }, recordingLog());
    expect(at).toEqual(['09:14']);
    await vi.advanceTimersByTimeAsync(3 * MINUTE_MS);
    expect(at).toEqual(['09:14', '09:15', '09:16', '09:17']);
  });

  test.each([-60, 60])('goes on ticking every minute when the time is set %i minutes on', async (minutes) => {
    let ticks = 0;
    const log = recordingLog();
    clock = startClock(async () => {
      ticks += 1;
      return 0;
    }, log);
    await vi.advanceTimersByTimeAsync(MINUTE_MS);
    vi.setSystemTime(Date.now() + minutes * MINUTE_MS);
    await vi.advanceTimersByTimeAsync(5 * MINUTE_MS);
    expect(ticks).toBe(7);
    expect(log.lines.map(({ details }) => details)).toEqual([{ byMs: minutes * MINUTE_MS }]);
  });

  test('begins no tick while one is under way', async () => {
    const { tick, begun, end } = controlledTick();
    clock = startClock(tick, recordingLog());
    await vi.advanceTimersByTimeAsync(5 * MINUTE_MS);
    expect(begun()).toBe(1);
    end();
    await vi.advanceTimersByTimeAsync(MINUTE_MS);
    expect(begun()).toBe(2);
    end();
  });

  test('notes a tick that failed, and tries again with the next', async () => {
    const { tick, begun, end, fail } = controlledTick();
    const log = recordingLog();
    clock = startClock(tick, log);
    const failure = new Error('the database went away');
    fail(failure);
    await vi.advanceTimersByTimeAsync(MINUTE_MS);
    expect(log.lines).toEqual([
      { level: 'error', message: 'tick failed; the next one tries again', details: { err: failure } },
    ]);
    expect(begun()).toBe(2);
    end(3);
    await vi.advanceTimersByTimeAsync(0);
    expect(log.lines.at(-1)).toEqual({ level: 'info', message: 'sprints served', details: { served: 3 } });
  });

  test('says nothing of a tick that had nothing to do', async () => {
    const log = recordingLog();
    clock = startClock(async () => 0, log);
    await vi.advanceTimersByTimeAsync(MINUTE_MS);
    expect(log.lines).toEqual([]);
  });
});

describe('stopping', () => {
  test('waits for the tick under way', async () => {
    const { tick, end } = controlledTick();
    const running = startClock(tick, recordingLog());
    let stopped = false;
    const stopping = running.stop().then(() => {
      stopped = true;
    });
    await vi.advanceTimersByTimeAsync(10 * MINUTE_MS);
    expect(stopped).toBe(false);
    end();
    await stopping;
    expect(stopped).toBe(true);
  });

  test('ends the ticking', async () => {
    const { tick, begun, end } = controlledTick();
    const running = startClock(tick, recordingLog());
    end();
    await running.stop();
    await vi.advanceTimersByTimeAsync(10 * MINUTE_MS);
    expect(begun()).toBe(1);
    expect(vi.getTimerCount()).toBe(0);
  });

  test('waits for a tick that fails as well, without failing itself', async () => {
    const { tick, fail } = controlledTick();
    const running = startClock(tick, recordingLog());
    const stopping = running.stop();
    fail(new Error('too late'));
    await expect(stopping).resolves.toBeUndefined();
  });

  test('reports each tick, and the time of those that ended well', async () => {
    const { tick, end, fail } = controlledTick();
    const ticks: unknown[] = [];
    clock = startClock(tick, recordingLog(), { ticked: (...given) => void ticks.push(given) });
    end();
    await vi.advanceTimersByTimeAsync(MINUTE_MS);
    fail(new Error('no database'));
    await vi.advanceTimersByTimeAsync(0);
    expect(ticks).toEqual([
      [true, Date.parse('2026-11-02T09:14:30Z') / 1_000],
      [false, expect.any(Number)],
    ]);
  });
});

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

describe('work that is due daily', () => {
  test('does all batches of a day, and then no more until the next day', async () => {
    const heap = heapOf(20, 7);
    expect(await heap.at('2026-11-02T23:58:00Z')).toBe(27);
    expect(await heap.at('2026-11-02T23:59:00Z')).toBe(0);
    expect(heap.batches()).toBe(3);
    await heap.at('2026-11-03T00:00:00Z');
    expect(heap.batches()).toBe(4);
  });

  test('leaves what is more than ten batches to the next tick', async () => {
    const heap = heapOf(...Array.from({ length: 12 }, () => 20));
    expect(await heap.at('2026-11-02T09:00:00Z')).toBe(200);
    expect(await heap.at('2026-11-02T09:01:00Z')).toBe(40);
    expect(await heap.at('2026-11-02T09:02:00Z')).toBe(0);
  });

  test('tries again at the next tick when a batch fails', async () => {
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
});
