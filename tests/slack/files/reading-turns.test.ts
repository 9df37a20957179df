/** Whose files are read when: two at once, one of a person, and no workspace fills the queue. */
import { describe, expect, it } from 'vitest';
import { Refusal, type RefusalCode } from '../../../src/app/refusal.ts';
import { ReadingTurns, type TurnLimits } from '../../../src/slack/files/reading-turns.ts';

const LIMITS: TurnLimits = { atOnce: 2, bytesAtOnce: 20, waiting: 3, bytesOfWorkspace: 50 };

/** Work that is done when the test says so. */
class Yard {
  readonly turns = new ReadingTurns(LIMITS);
  readonly begun: string[] = [];
  readonly #ends = new Map<string, () => void>();

  /** @returns the code of the refusal; undefined once it is done */
  give(userId: string, bytes = 1, workspaceId = 'W1'): Promise<RefusalCode | undefined> {
    const { promise, resolve } = Promise.withResolvers<void>();
    const taken = this.turns.take({ workspaceId, userId, bytes }, async () => {
      this.begun.push(userId);
      this.#ends.set(userId, resolve);
      await promise;
    });
    return taken.then(
      () => undefined,
      (error: unknown) => {
        if (error instanceof Refusal) return error.code;
        throw error;
      },
    );
  }

  async end(userId: string, given: Promise<unknown>): Promise<void> {
    await settled();
    this.#ends.get(userId)?.();
    await given;
    await settled();
  }
}

/** Everything that can go on has gone on. */
const settled = () => new Promise((resolve) => setImmediate(resolve));

describe('reading files', () => {
  it('goes on for two people at once; the third waits until one of them is done', async () => {
    const yard = new Yard();
    const [first, second, third] = [yard.give('UA'), yard.give('UB'), yard.give('UC')];
    await settled();
    expect(yard.begun).toEqual(['UA', 'UB']);
    await yard.end('UB', second);
    expect(yard.begun).toEqual(['UA', 'UB', 'UC']);
    await yard.end('UA', first);
    await yard.end('UC', third);
  });

  it('is refused to a person of whom something is being read or waits, and is open to them afterwards', async () => {
    const yard = new Yard();
    const first = yard.give('UA');
    expect(await yard.give('UA')).toBe('reading-yours');
    await yard.end('UA', first);
    const again = yard.give('UA');
    await yard.end('UA', again);
    expect(await again).toBeUndefined();
    expect(yard.begun).toEqual(['UA', 'UA']);
  });

  it('lets a large one go alone', async () => {
    const yard = new Yard();
    const [first, second] = [yard.give('UA', 15), yard.give('UB', 15)];
    await settled();
    expect(yard.begun).toEqual(['UA']);
    await yard.end('UA', first);
    expect(yard.begun).toEqual(['UA', 'UB']);
    await yard.end('UB', second);
  });

  it('refuses a workspace more bytes than its own, but always takes one form', async () => {
    const yard = new Yard();
    const first = yard.give('UA', 60);
    expect(await yard.give('UB', 1)).toBe('reading-others');
    const other = yard.give('UC', 10, 'W2');
    await yard.end('UA', first);
    await yard.end('UC', other);
    expect(await other).toBeUndefined();
  });

  it('lets nobody wait behind as many as may wait', async () => {
    const yard = new Yard();
    const given = ['UA', 'UB', 'UC', 'UD', 'UE'].map((user) => [user, yard.give(user)] as const);
    expect(await yard.give('UF')).toBe('reading-others');
    for (const [user, taken] of given) await yard.end(user, taken);
  });

  it('takes next whose workspace is being read for the least', async () => {
    const yard = new Yard();
    const given = [
      ['UA', yard.give('UA')],
      ['UB', yard.give('UB')],
      ['UC', yard.give('UC')],
      ['UD', yard.give('UD', 1, 'W2')],
    ] as const;
    await yard.end('UA', given[0][1]);
    expect(yard.begun).toEqual(['UA', 'UB', 'UD']);
    for (const [user, taken] of given.slice(1)) await yard.end(user, taken);
    expect(yard.begun).toEqual(['UA', 'UB', 'UD', 'UC']);
  });

  it('gives a turn back when the work fails', async () => {
    const turns = new ReadingTurns(LIMITS);
    const given = { workspaceId: 'W1', userId: 'UA', bytes: 1 };
    const failing = turns.take(given, async () => {
      throw new Error('it sank');
    });
    await expect(failing).rejects.toThrow('it sank');
    expect(await turns.take(given, async () => 'afloat')).toBe('afloat');
  });
});
