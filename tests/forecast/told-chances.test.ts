import fc from 'fast-check';
import { expect, test } from 'vitest';
import { correctedChance, correctedDistribution, withPlaces } from '../../src/forecast/told-chances.ts';
import { weightedPoints } from '../../src/forecast/weighted-points.ts';
import { seededRandom } from './seeded-random.ts';

const anyPlaces = fc.array(
  fc
    .tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }))
    .map(([a, b]) => ({ lessChance: Math.min(a, b), atMostChance: Math.max(a, b) })),
  { maxLength: 60 },
);
const anyChance = fc.double({ min: 0, max: 1, noNaN: true });

test('without a record a chance is told as it is', () => {
  fc.assert(
    fc.property(anyChance, (chance) => {
      expect(correctedChance([], chance)).toBeCloseTo(chance, 12);
    }),
  );
});

test('a larger chance stays the larger one, and certainty stays certain', () => {
  fc.assert(
    fc.property(anyPlaces, anyChance, anyChance, (places, a, b) => {
      const [low, high] = [Math.min(a, b), Math.max(a, b)];
      expect(correctedChance(places, low)).toBeLessThanOrEqual(correctedChance(places, high) + 1e-12);
      expect(correctedChance(places, 0)).toBe(0);
      expect(correctedChance(places, 1)).toBe(1);
    }),
  );
});

test('the corrected chances of a distribution add up to 1, and stay with their amounts', () => {
  fc.assert(
    fc.property(anyPlaces, (places) => {
      const { points, chances } = correctedDistribution(places, weightedPoints([1, 2, 5], [3, 1, 2]));
      expect([...points]).toEqual([1, 2, 5]);
      expect(chances.every((chance) => chance >= -1e-12)).toBe(true);
      expect(chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 12);
    }),
  );
});

test('half of the outcomes below the mark of 20%, in a long record: the mark is told as more than 35%', () => {
  const places = Array.from({ length: 200 }, (_, i) =>
    i % 2 === 0 ? { lessChance: 0.05, atMostChance: 0.15 } : { lessChance: 0.5, atMostChance: 0.7 },
  );
  // (100·0.2 + 100) ÷ 300.
  expect(correctedChance(places, 0.2)).toBeCloseTo(0.4, 12);
});

test('only the latest 200 outcomes are remembered', () => {
  const old = Array.from({ length: 200 }, () => ({ lessChance: 0, atMostChance: 0 }));
  const recent = Array.from({ length: 200 }, () => ({ lessChance: 1, atMostChance: 1 }));
  expect(withPlaces(old, recent)).toEqual(recent);
});

test('a forecast that is too sure of itself is put right', () => {
  // It tells the square of what is true, in the limit of a long record: outcomes at true chance u fall at u².
  const random = seededRandom(3);
  const places = Array.from({ length: 200 }, () => {
    const at = random.uniform() ** 2;
    return { lessChance: at, atMostChance: at };
  });
  for (const truth of [0.3, 0.5, 0.8]) {
    const told = truth ** 2;
    expect(Math.abs(correctedChance(places, told) - truth)).toBeLessThan(0.5 * Math.abs(told - truth));
  }
});
