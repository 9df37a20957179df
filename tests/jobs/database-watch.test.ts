import { beforeEach, describe, expect, it, vi } from 'vitest';
import { type LookAtDatabase, watchDatabase } from '../../src/jobs/database-watch.ts';

type Said = Awaited<ReturnType<LookAtDatabase>> | Error;

const FINE = { trouble: undefined, clockAheadMs: 20_000 };
const FULL = { trouble: 'database-full', clockAheadMs: 0 } as const;

let said: Said;
let nowMs: number;
let asked: string[];
let lines: string[];
let events: unknown[];
let looked: boolean[];
const note =
  (level: string) =>
  (details: Record<string, unknown>, message: string): void => {
    lines.push(`${level}: ${message}`);
    events.push(details);
  };
const watching = () =>
  watchDatabase(
    async (how) => {
      asked.push(how);
      if (said instanceof Error) throw said;
      return said;
    },
    { info: note('info'), error: note('error') },
    () => nowMs,
    (takesIn) => looked.push(takesIn),
  );

beforeEach(() => {
  [said, nowMs, asked, lines, events, looked] = [FINE, 0, [], [], [], []];
});

describe('the state of the database', () => {
  it('is looked at by writing at each tick, and by reading when somebody asks', async () => {
    const watch = watching();
    await watch.look();
    expect(await watch.problems()).toEqual([]);
    expect(asked).toEqual(['writing', 'reading']);
    expect(lines).toEqual([]);
  });

  it('is counted as taking nothing in while there is a trouble, not when only the clocks differ or there is no answer', async () => {
    const watch = watching();
    for (const state of [
      FINE,
      FULL,
      { trouble: undefined, clockAheadMs: 3_600_000 },
      new Error('away'),
      FULL,
    ]) {
      said = state;
      await watch.look();
    }
    expect(looked).toEqual([true, false, true, false]);
  });

  it('is said not to answer within two seconds, while a frozen server is asked once', async () => {
    vi.useFakeTimers();
    try {
      let asks = 0;
      const { problems } = watchDatabase(
        () => {
          asks += 1;
          return new Promise(() => undefined);
        },
        { info: () => undefined, error: () => undefined },
      );
      for (let i = 0; i < 5; i += 1) {
        const answer = problems();
        await vi.advanceTimersByTimeAsync(1_999);
        expect(await answer).toEqual(['the database does not answer']);
      }
      expect(asks).toBe(1);
    } finally {
      vi.useRealTimers();
    }
  });

  it.each([
    ['database-full', 'the database has no room'],
    ['database-read-only', 'the database is read-only'],
    ['database-busy', 'the database has no connection left'],
  ] as const)('is told to who asks: %s', async (trouble, words) => {
    said = { trouble, clockAheadMs: 0 };
    expect(await watching().problems()).toEqual([words]);
    expect(events).toEqual([{ event: trouble }]);
  });

  it('counts as bad when its clock is five minutes from ours, either way', async () => {
    const words = ['the clocks of this machine and of the database differ by more than five minutes'];
    for (const clockAheadMs of [300_000, -3_600_000]) {
      said = { trouble: undefined, clockAheadMs };
      expect(await watching().problems()).toEqual(words);
    }
    expect(events).toEqual([
      { event: 'clocks-differ', aheadSeconds: 300 },
      { event: 'clocks-differ', aheadSeconds: -3_600 },
    ]);
    said = { trouble: undefined, clockAheadMs: 299_000 };
    expect(await watching().problems()).toEqual([]);
  });

  it('is logged once when it turns bad, again every ten minutes, and once when it is well again', async () => {
    const watch = watching();
    said = FULL;
    for (const atMs of [0, 60_000, 540_000, 600_000, 660_000]) {
      nowMs = atMs;
      await watch.look();
    }
    said = FINE;
    await watch.look();
    await watch.look();
    const full =
      'error: The database has no room. Make room on its disk. Until then nothing is recorded, people are told so, and all goes on by itself afterwards.';
    expect(lines).toEqual([full, full, 'info: No longer so: the database has no room.']);
    expect(events.at(-1)).toEqual({ event: 'database-full', over: true });
  });

  it('that does not answer is told to who asks, and fails no tick', async () => {
    said = new Error('away');
    const watch = watching();
    await expect(watch.look()).resolves.toBeUndefined();
    expect(await watch.problems()).toEqual(['the database does not answer']);
  });
});
