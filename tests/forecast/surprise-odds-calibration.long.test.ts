/** How often the odds' intervals hold the truth, in worlds whose rules are written here; open data hold no surprise by card. */
import { describe, expect, test } from 'vitest';
import { type ClosedCard, type SurpriseOddsBySize, surpriseOdds } from '../../src/forecast/surprise-odds.ts';
import { seededRandom } from './seeded-random.ts';

const { uniform, normal } = seededRandom(20261130);
/** Small cards are many and large ones few, as in most plans. */
const SIZES = [1, 2, 3, 5, 8, 13];
const A_PLAN = [1, 1, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2, 3, 3, 3, 3, 3, 5, 5, 5, 5, 8, 8, 13];

/** For one team: the true chance of surprise work of each size. */
type World = () => (points: number) => number;

function logistic(logOdds: number): number {
  return 1 / (1 + Math.exp(-logOdds));
}

const WORLDS: Record<string, World> = {
  'the same odds for all sizes': () => {
    const level = -1.2 + 0.6 * normal();
    return () => logistic(level);
  },
  'odds of each size its own': () => {
    const own = new Map(SIZES.map((points) => [points, logistic(-1 + 0.8 * normal())]));
    return (points) => own.get(points) ?? 0;
  },
  'odds that go with size': () => {
    const [level, slope] = [-2.2 + 0.5 * normal(), 0.9 + 0.3 * normal()];
    return (points) => logistic(level + slope * Math.log(points));
  },
  'odds that go steeply with size': () => {
    const [level, slope] = [-3 + 0.4 * normal(), 1.5];
    return (points) => logistic(level + slope * Math.log(points));
  },
};

function sizeAtRandom(): number {
  return A_PLAN[Math.floor(uniform() * A_PLAN.length)] ?? 1;
}

/** Large cards are begun and finished less often; surprise shows in proportion to what is done. */
function cardOf(points: number, chance: number): ClosedCard {
  const isBegun = uniform() > 0.02 * points;
  const doneShare = !isBegun ? 0 : uniform() < 0.03 * points ? uniform() : 1;
  const shows = uniform() < chance && uniform() < doneShare;
  return { estimatePoints: points, surprisePoints: shows ? 2 : 0, doneShare };
}

describe.each(Object.entries(WORLDS))('%s', (_name, world) => {
  test.each([12, 40, 120])(
    'the interval holds the true share in 90 to 98 of 100 cases: %i cards',
    (count) => {
      let [held, cases, sum, trueSum] = [0, 0, 0, 0];
      for (let team = 0; team < 250; team += 1) {
        const truth = world();
        const cards = Array.from({ length: count }, () => {
          const points = sizeAtRandom();
          return cardOf(points, truth(points));
        });
        const odds = surpriseOdds(cards, SIZES) as SurpriseOddsBySize;
        for (const { estimatePoints, likelyShare, likelyInterval } of odds.sizes) {
          const share = truth(estimatePoints);
          cases += 1;
          if (likelyInterval.low <= share && share <= likelyInterval.high) held += 1;
          if (estimatePoints >= 8) {
            sum += likelyShare;
            trueSum += share;
          }
        }
      }
      expect(held / cases).toBeGreaterThanOrEqual(0.9);
      expect(held / cases).toBeLessThanOrEqual(0.98);
      // Large cards are read neither far too low nor far too high, though many are never begun. Of 12 cards it is mostly belief.
      if (count > 12) {
        expect(sum / trueSum).toBeGreaterThan(0.75);
        expect(sum / trueSum).toBeLessThan(1.25);
      }
    },
  );
});
