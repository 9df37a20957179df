import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rankSumChance } from '../../src/forecast/rank-sum.ts';

/** Every division counted one by one, by how many pairs the later sample wins, with halves for ties. */
function byBruteForce(earlier: readonly number[], later: readonly number[]): number {
  const all = [...earlier, ...later];
  const wins = (chosen: readonly number[]): number => {
    const others = all.filter((_, i) => !chosen.includes(i));
    return chosen.reduce(
      (sum, i) => sum + others.reduce((w, x) => w + (Math.sign((all[i] as number) - x) + 1) / 2, 0),
      0,
    );
  };
  const middle = (earlier.length * later.length) / 2;
  const observed = Math.abs(wins(later.map((_, i) => earlier.length + i)) - middle);
  let [far, divisions] = [0, 0];
  const choose = (from: number, chosen: readonly number[]): void => {
    if (chosen.length === later.length) {
      divisions += 1;
      if (Math.abs(wins(chosen) - middle) >= observed) far += 1;
      return;
    }
    for (let i = from; i < all.length; i += 1) choose(i + 1, [...chosen, i]);
  };
  choose(0, []);
  return far / divisions;
}

test('is what counting every division gives, with ties, wherever it is small', () => {
  const sample = fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 2, maxLength: 5 });
  fc.assert(
    fc.property(sample, sample, (earlier, later) => {
      const [ours, counted] = [rankSumChance(earlier, later), byBruteForce(earlier, later)];
      if (ours === 1) expect(counted).toBeGreaterThan(0.03);
      else expect(ours).toBeCloseTo(counted, 12);
    }),
    { seed: 20261129 },
  );
});

test.each([
  [4, 2 / 70],
  [5, 2 / 252],
])('two samples of %i values that don’t overlap: two of all divisions', (size, chance) => {
  const earlier = Array.from({ length: size }, (_, i) => i);
  expect(
    rankSumChance(
      earlier,
      earlier.map((value) => value + 100),
    ),
  ).toBeCloseTo(chance, 12);
  expect(
    rankSumChance(
      earlier.map((value) => value + 100),
      earlier,
    ),
  ).toBeCloseTo(chance, 12);
});

test('of 6 and 8 values, 6 pairs the other way are the most for a chance of 1 in 50, as tables of the test say', () => {
  // Critical values of U for 6 and 8 values, two-sided: 8 at 5 in 100, 6 at 2 in 100, 4 at 1 in 100 (from memory).
  const chanceOf = (pairs: number): number => {
    const later = [8, 9, 10, 11, 12, 8 - pairs - 0.5 < 0 ? 0.5 : 8 - pairs - 0.5];
    return rankSumChance([0, 1, 2, 3, 4, 5, 6, 7], later);
  };
  expect(chanceOf(4)).toBeLessThanOrEqual(0.01);
  expect(chanceOf(5)).toBeGreaterThan(0.01);
  expect(chanceOf(6)).toBeLessThanOrEqual(0.02);
  expect(chanceOf(7)).toBeGreaterThan(0.02);
});

test('of equal values, or of none, nothing is a difference', () => {
  expect(rankSumChance([1, 1, 1], [1, 1])).toBe(1);
  expect(rankSumChance([], [1, 2])).toBe(1);
  expect(rankSumChance([1, 2], [])).toBe(1);
});
