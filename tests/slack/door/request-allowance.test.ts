import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RequestAllowance } from '../../../src/slack/door/request-allowance.ts';

function allowanceOf(perMinute: number, mostPeople?: number) {
  let nowMs = 1_000_000;
  const allowance = new RequestAllowance(perMinute, () => nowMs, mostPeople);
  return {
    take: (person = 'ana', cost = 1) => allowance.take(person, cost),
    pass: (ms: number) => {
      nowMs += ms;
    },
    peopleCount: () => allowance.peopleCount,
  };
}

describe('the allowance of a person', () => {
  it('lets a whole minute’s requests through at once, and then as many as the time gives back', () => {
    const { take, pass } = allowanceOf(60);
    for (let i = 0; i < 60; i += 1) expect(take().isAllowed).toBe(true);
    expect(take()).toEqual({ isAllowed: false, waitSeconds: 1, isFirst: true });
    pass(1_000);
    expect(take().isAllowed).toBe(true);
    expect(take().isAllowed).toBe(false);
  });

  it('says how long to wait for the same request, and after that lets it through', () => {
    const { take, pass } = allowanceOf(60);
    take('ana', 58);
    const refused = take('ana', 5);
    expect(refused).toMatchObject({ isAllowed: false, waitSeconds: 3 });
    pass(3_000);
    expect(take('ana', 5).isAllowed).toBe(true);
  });

  it('says once that it is used up, until something was let through again', () => {
    const { take, pass } = allowanceOf(60);
    take('ana', 60);
    expect([take(), take()]).toMatchObject([{ isFirst: true }, { isFirst: false }]);
    pass(1_000);
    take();
    expect(take()).toMatchObject({ isFirst: true });
  });

  it('is nobody else’s', () => {
    const { take } = allowanceOf(60);
    take('ana', 60);
    expect(take('ana').isAllowed).toBe(false);
    expect(take('ben').isAllowed).toBe(true);
  });

  it('never lets through more than a minute’s requests above what time gave back, in every case', () => {
    const step = fc.record({ passMs: fc.nat({ max: 20_000 }), cost: fc.constantFrom(1, 5) });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 200 }), (steps) => {
        const { take, pass } = allowanceOf(60);
        let allowed = 0;
        let passedMs = 0;
        for (const { passMs, cost } of steps) {
          pass(passMs);
          passedMs += passMs;
          if (take('ana', cost).isAllowed) allowed += cost;
          expect(allowed).toBeLessThanOrEqual(60 + passedMs / 1_000 + 1e-6);
        }
      }),
    );
  });

  it('is remembered for a limited number of people, longest for those who asked last', () => {
    const { take, peopleCount } = allowanceOf(60, 3);
    take('ana', 60);
    for (const person of ['ben', 'chi', 'ana', 'dayo', 'eva']) take(person);
    expect(peopleCount()).toBe(3);
    expect(take('ana').isAllowed).toBe(false);
    expect(take('ben').isAllowed).toBe(true);
  });
});
