import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BetaParameters } from '../../src/forecast/beta-distribution.ts';
import { betaBinomialLogLikelihood, gradedOdds } from '../../src/forecast/graded-odds.ts';
import { spreadsheet } from './spreadsheet.ts';

/** The published fit to 6,115 families of twelve children, and its expected counts (primary text read, recomputed). */
const PUBLISHED: BetaParameters = { alpha: 34.09558, beta: 31.5715 };
const EXPECTED = [2.3, 22.6, 104.8, 310.9, 655.7, 1036.2, 1257.9, 1182.1, 853.6, 461.9, 177.9, 43.8, 5.2];

const someGroup = fc
  .integer({ min: 0, max: 30 })
  .chain((trials) =>
    fc.record({ trials: fc.constant(trials), successes: fc.integer({ min: 0, max: trials }) }),
  );

function shareOf({ alpha, beta }: BetaParameters): number {
  return alpha / (alpha + beta);
}

function shares(
  counts: readonly (readonly [number, number, number])[],
  estimates: readonly number[],
): number[] {
  const groups = counts.map(([estimatePoints, trials, successes]) => ({ estimatePoints, trials, successes }));
  return gradedOdds(groups, estimates).map(shareOf);
}

describe('the likelihood of a counted group', () => {
  test('gives the published expected counts of 6,115 families', () => {
    const ways = spreadsheet(EXPECTED.map((_, k) => `COMBIN(12,${k})`));
    for (const [successes, expected] of EXPECTED.entries()) {
      const logChance = betaBinomialLogLikelihood(PUBLISHED, { trials: 12, successes });
      const count = 6115 * (ways[successes] as number) * Math.exp(logChance);
      expect(count, String(successes)).toBeCloseTo(expected, 1);
    }
  });

  test('is the product of the chances one trial after the other', () => {
    // After s successes in t trials the next is a success with chance (α + s)/(α + β + t): Pólya's urn.
    fc.assert(
      fc.property(someGroup, fc.double({ min: 0.1, max: 50, noNaN: true }), (group, alpha) => {
        const beta = 2;
        let logProduct = 0;
        const { trials, successes } = group;
        for (let t = 0; t < trials; t += 1) {
          const s = Math.min(t, successes);
          logProduct += Math.log((t < successes ? alpha + s : beta + t - s) / (alpha + beta + t));
        }
        expect(Math.abs(betaBinomialLogLikelihood({ alpha, beta }, group) - logProduct)).toBeLessThan(1e-9);
      }),
      { seed: 20261110 },
    );
  });
});

describe('the odds by size', () => {
  test('of many cards are the shares that were seen', () => {
    const [small, large] = shares(
      [
        [1, 4000, 400],
        [8, 4000, 2400],
      ],
      [1, 8],
    );
    expect(small).toBeCloseTo(0.1, 2);
    expect(large).toBeCloseTo(0.6, 2);
  });

  test('go on beyond the largest size, and between sizes, where they go with size', () => {
    const seen = [
      [1, 200, 20],
      [2, 200, 36],
      [4, 200, 62],
    ] as const;
    const [three, sixteen] = shares(seen, [3, 16]) as [number, number];
    expect(three).toBeGreaterThan(0.2);
    expect(three).toBeLessThan(0.31);
    expect(sixteen).toBeGreaterThan(0.45);
    expect(sixteen).toBeLessThan(0.75);
  });

  test('are alike for an unseen size where they don’t go with size', () => {
    const seen = [1, 2, 3, 5].map((points) => [points, 200, 40] as const);
    expect(shares(seen, [8])[0]).toBeCloseTo(0.2, 1);
  });

  test('of nothing seen are a weak belief, worth a few cards', () => {
    const [belief] = gradedOdds([], [5]);
    expect(belief && shareOf(belief)).toBeCloseTo(0.42, 1);
    expect(belief && belief.alpha + belief.beta).toBeLessThan(5);
  });
});
