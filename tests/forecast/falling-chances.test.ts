import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { type FoundChance, fallingChances } from '../../src/forecast/falling-chances.ts';

/** Of 1, 2, 3 … half points; what is beyond has the last one's. */
function of(found: readonly FoundChance[]): (points: number) => number {
  const at = (points: number) => found[Math.min(found.length, Math.round(2 * points)) - 1] as FoundChance;
  return fallingChances(at, found.length / 2);
}

test('chances that fall are left as they are, and between two steps the next one holds', () => {
  const chanceOf = of([0.9, 0.9, 0.4, 0.1].map((chance) => ({ chance, weight: 1 })));
  expect([0.5, 1, 1.5, 2, 50, 1e9].map(chanceOf)).toEqual([0.9, 0.9, 0.4, 0.1, 0.1, 0.1]);
  expect(chanceOf(1.2)).toBe(0.4);
});

test('a rise becomes the mean of both sides, by what speaks for each', () => {
  const chanceOf = of([
    { chance: 0.2, weight: 1 },
    { chance: 0.8, weight: 3 },
    { chance: 0.1, weight: 1 },
  ]);
  expect([0.5, 1, 1.5].map(chanceOf)).toEqual([expect.closeTo(0.65, 12), expect.closeTo(0.65, 12), 0.1]);
});

test('no falling sequence of tenths is nearer (all are tried)', () => {
  const chance = fc.record({
    chance: fc.integer({ min: 0, max: 10 }).map((tenths) => tenths / 10),
    weight: fc.integer({ min: 1, max: 4 }),
  });
  const falling = (length: number, most: number): number[][] =>
    length === 0
      ? [[]]
      : Array.from({ length: most + 1 }, (_, tenths) => tenths).flatMap((tenths) =>
          falling(length - 1, tenths).map((rest) => [tenths / 10, ...rest]),
        );
  fc.assert(
    fc.property(fc.array(chance, { minLength: 4, maxLength: 4 }), (found) => {
      // What is beyond the last step weighs nothing here: it has next to no weight of its own.
      const chanceOf = fallingChances(
        (points) =>
          points > 2 ? { chance: 0, weight: 1e-9 } : (found[Math.round(2 * points) - 1] as FoundChance),
        2,
      );
      const off = (chances: readonly number[]): number =>
        found.reduce((sum, one, i) => sum + one.weight * (one.chance - (chances[i] as number)) ** 2, 0);
      const mine = off([0.5, 1, 1.5, 2].map(chanceOf));
      expect(mine).toBeLessThanOrEqual(Math.min(...falling(4, 10).map(off)) + 1e-9);
    }),
    { numRuns: 40 },
  );
});

test('they are found once, and in as many steps for thousands of points as for three hundred', () => {
  const find = vi.fn((points: number): FoundChance => ({ chance: 1 / points, weight: 1 }));
  const chanceOf = fallingChances(find, 90_000);
  expect(find).not.toHaveBeenCalled();
  expect([1, 80_000, 80_001].map(chanceOf)).toEqual([1 / 300, 1 / 80_100, 1 / 80_100]);
  expect(find.mock.calls.length).toBe(320);
});

test('beyond fifty points each whole point still has a chance of its own', () => {
  const chanceOf = fallingChances((points) => ({ chance: 1 / points, weight: 1 }), 200);
  expect([1, 67, 67.5, 199].map(chanceOf)).toEqual([1, 1 / 67, 1 / 68, 1 / 199]);
});
