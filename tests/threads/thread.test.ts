/** A thread that is asked, and stopped when it takes more than it may. */
import { afterEach, describe, expect, it } from 'vitest';
import { Thread, type ThreadLimits, TooMuch, withThread } from '../../src/threads/thread.ts';

const SCRIPT = new URL('./asked-thread.ts', import.meta.url);
const open: Thread[] = [];

function thread(limits: Partial<ThreadLimits> = {}): Thread {
  const made = new Thread(SCRIPT, { memoryMb: 64, timeoutMs: 60_000, ...limits });
  open.push(made);
  return made;
}

afterEach(async () => {
  await Promise.all(open.splice(0).map((one) => one.stop()));
});

describe('a thread', () => {
  it('answers one question after the other', async () => {
    const asked = thread();
    expect(await asked.ask({ double: 4 })).toBe(8);
    expect(await asked.ask({ double: 5 })).toBe(10);
  });

  it('gets a buffer in place of this one', async () => {
    const bytes = new Uint8Array([1, 2, 3]);
    expect(await thread().ask({ sum: bytes }, [bytes.buffer])).toBe(6);
    expect(bytes.byteLength).toBe(0);
  });

  it('says what it threw, and can be asked again', async () => {
    const asked = thread();
    await expect(asked.ask({ fail: 'no berth' })).rejects.toThrow('no berth');
    expect(await asked.ask({ double: 1 })).toBe(2);
  });

  it('is stopped when an answer takes too long, and answers no more', async () => {
    const asked = thread({ timeoutMs: 50 });
    await expect(asked.ask({ forever: true })).rejects.toThrow(TooMuch);
    expect(asked.isAlive).toBe(false);
    await expect(asked.ask({ double: 1 })).rejects.toThrow(TooMuch);
  });

  it('is stopped when it keeps more than it may', async () => {
    const asked = thread({ memoryMb: 16 });
    await expect(asked.ask({ hoard: true })).rejects.toThrow(TooMuch);
  });

  it('gives way to the next one while nobody asks it, and not before it has answered', async () => {
    const [idle, busy] = [thread({ givesWay: true }), thread({ givesWay: true })];
    expect(idle.isAlive).toBe(false);
    const answer = busy.ask({ double: 4 });
    const others = [thread(), thread()];
    expect(await answer).toBe(8);
    expect([busy, ...others].map(({ isAlive }) => isAlive)).toEqual([true, true, true]);
    thread();
    expect([busy, ...others].map(({ isAlive }) => isAlive)).toEqual([false, true, true]);
  });

  it('lets the loop turn meanwhile', async () => {
    let turns = 0;
    const turning = setInterval(() => {
      turns += 1;
    }, 1);
    const asked = thread({ timeoutMs: 200 });
    await expect(asked.ask({ forever: true })).rejects.toThrow(TooMuch);
    clearInterval(turning);
    expect(turns).toBeGreaterThan(0);
  });

  it('ends with what it was started for, also when that fails', async () => {
    let used: Thread | undefined;
    const failing = withThread(SCRIPT, { memoryMb: 64, timeoutMs: 60_000 }, async (lent) => {
      used = lent;
      throw new Error('it sank');
    });
    await expect(failing).rejects.toThrow('it sank');
    expect(used?.isAlive).toBe(false);
  });
});
