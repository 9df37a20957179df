import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { setChances } from '../../src/forecast/set-chances.ts';
import { weightedPoints } from '../../src/forecast/weighted-points.ts';

/** Whatever the commitment. */
const FINISHES = () => weightedPoints([10, 14, 16, 18, 20, 24], [1, 2, 2, 2, 2, 1]);

describe('the chances of a set of cards', () => {
  test('of 13 and 7 points with a floor of 80% are one: nothing less than both reaches it', () => {
    const set = setChances(FINISHES, [13, 7], 0.8);
    expect(set?.all).toBeCloseTo(0.3, 12);
    expect(set?.kept).toBeCloseTo(0.3, 12);
  });

  test('of finishing all is that of finishing so many points', () => {
    for (const sizes of [[5, 5, 5, 5], [13, 5, 1, 1], Array.from({ length: 20 }, () => 1)]) {
      expect(setChances(FINISHES, sizes, 0.8)?.all).toBeCloseTo(0.3, 12);
    }
  });

  test('go by what is finished of as much as they come to', () => {
    const ofItAll = (points: number) => weightedPoints([points], [1]);
    expect(setChances(ofItAll, [13, 7], 0.8)).toMatchObject({ kept: 1, all: 1 });
  });

  test('are undefined without points', () => {
    expect(setChances(FINISHES, [], 0.8)).toBeUndefined();
    expect(setChances(FINISHES, [0, 0], 0.8)).toBeUndefined();
  });

  test('are a little better for small cards, of which the last one is seldom needed', () => {
    const small = setChances(
      FINISHES,
      Array.from({ length: 20 }, () => 1),
      0.8,
    )?.kept as number;
    const large = setChances(FINISHES, [8, 8, 4], 0.8)?.kept as number;
    expect(small).toBeGreaterThan(large);
  });
});

describe('the card that endangers a set most', () => {
  test('is the one without which the others are kept most likely (all tried one by one)', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(1, 2, 3, 5, 8, 13), { minLength: 2, maxLength: 8 }), (sizes) => {
        const set = setChances(FINISHES, sizes, 0.8);
        const without = sizes.map((_, i) => setChances(FINISHES, sizes.toSpliced(i, 1), 0.8)?.kept as number);
        const best = Math.max(...without);
        const kept = set?.kept as number;
        if (set?.without) expect(set.without.kept).toBeCloseTo(best, 12);
        else if (kept < 0.8) expect(best).toBeLessThan(kept + 0.02 + 1e-12);
      }),
      { numRuns: 60 },
    );
  });

  test('is not named where the set is kept in 8 of 10 cases with it', () => {
    const finishes = (kept: number) => () => weightedPoints([8, 40], [1 - kept, kept]);
    expect(setChances(finishes(0.79), [8, 8], 0.8)?.without?.kept).toBeCloseTo(1, 12);
    expect(setChances(finishes(0.81), [8, 8], 0.8)?.without).toBeUndefined();
  });

  test('is not named where it makes no difference', () => {
    expect(setChances(() => weightedPoints([40], [1]), [5, 3], 0.8)?.without).toBeUndefined();
  });
});
