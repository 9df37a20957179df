import { describe, expect, it } from 'vitest';
import { ANSWER_KEPT_MS, sharedReadiness } from '../../../src/slack/door/readiness.ts';

function counted() {
  let nowMs = 0;
  const waiting: PromiseWithResolvers<readonly string[]>[] = [];
  const readiness = sharedReadiness(
    () => {
      const next = Promise.withResolvers<readonly string[]>();
      waiting.push(next);
      return next.promise;
    },
    () => nowMs,
  );
  return {
    readiness,
    waiting,
    pass: (ms: number) => {
      nowMs += ms;
    },
  };
}

describe('whether the bot is ready', () => {
  it('is asked once for everybody who wants to know while the answer is on its way', async () => {
    const { readiness, waiting, pass } = counted();
    const answers = [readiness(), readiness()];
    pass(60_000);
    answers.push(readiness());
    waiting[0]?.resolve(['no database']);
    expect(await Promise.all(answers)).toEqual(Array(3).fill(['no database']));
    expect(waiting).toHaveLength(1);
  });

  it('is known for a second and asked again after that', async () => {
    const { readiness, waiting, pass } = counted();
    const first = readiness();
    waiting[0]?.resolve([]);
    await first;
    pass(ANSWER_KEPT_MS - 1);
    await readiness();
    expect(waiting).toHaveLength(1);
    pass(1);
    readiness();
    expect(waiting).toHaveLength(2);
  });

  it('is asked again after a check that failed', async () => {
    const { readiness, waiting, pass } = counted();
    const first = readiness();
    waiting[0]?.reject(new Error('gone'));
    await expect(first).rejects.toThrow('gone');
    pass(ANSWER_KEPT_MS);
    readiness();
    expect(waiting).toHaveLength(2);
  });
});
