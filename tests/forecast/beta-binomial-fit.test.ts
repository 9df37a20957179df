import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CountedGroup } from '../../src/forecast/beta-binomial-fit.ts';
import { betaBinomialFit, betaBinomialLogLikelihood } from '../../src/forecast/beta-binomial-fit.ts';
import type { BetaParameters } from '../../src/forecast/beta-distribution.ts';
import { spreadsheet } from './spreadsheet.ts';

/**
 * Boys among the first twelve children of 6,115 families in Saxony (Geissler 1889; memory, but they add up to 6,115
 * and give the published fit).
 */
const FAMILIES = [3, 24, 104, 286, 670, 1033, 1343, 1112, 829, 478, 181, 45, 7];
/** The published fit and its expected counts (primary text read, recomputed). */
const PUBLISHED: BetaParameters = { alpha: 34.09558, beta: 31.5715 };
const EXPECTED = [2.3, 22.6, 104.8, 310.9, 655.7, 1036.2, 1257.9, 1182.1, 853.6, 461.9, 177.9, 43.8, 5.2];

const families: CountedGroup[] = FAMILIES.flatMap((count, successes) =>
  Array.from({ length: count }, () => ({ trials: 12, successes })),
);

function fitted(...args: Parameters<typeof betaBinomialFit>): BetaParameters {
  return betaBinomialFit(...args) as BetaParameters;
}

function meanOf({ alpha, beta }: BetaParameters): number {
  return alpha / (alpha + beta);
}

const someGroups = fc.array(
  fc
    .integer({ min: 0, max: 30 })
    .chain((trials) =>
      fc.record({ trials: fc.constant(trials), successes: fc.integer({ min: 0, max: trials }) }),
    ),
  { minLength: 1, maxLength: 8 },
);

describe('the likelihood of counted groups', () => {
  test('gives the published expected counts of 6,115 families', () => {
    const ways = spreadsheet(EXPECTED.map((_, k) => `COMBIN(12,${k})`));
    for (const [successes, expected] of EXPECTED.entries()) {
      const logChance = betaBinomialLogLikelihood(PUBLISHED, [{ trials: 12, successes }]);
      const count = 6115 * (ways[successes] as number) * Math.exp(logChance);
      expect(count, String(successes)).toBeCloseTo(expected, 1);
    }
  });

  test('is the product of the chances one trial after the other', () => {
    // After s successes in t trials the next is a success with chance (α + s)/(α + β + t): Pólya's urn.
    fc.assert(
      fc.property(someGroups, fc.double({ min: 0.1, max: 50, noNaN: true }), (groups, alpha) => {
        const beta = 2;
        let logProduct = 0;
        for (const { trials, successes } of groups) {
          for (let t = 0; t < trials; t += 1) {
            const isSuccess = t < successes;
            const s = Math.min(t, successes);
            logProduct += Math.log((isSuccess ? alpha + s : beta + t - s) / (alpha + beta + t));
          }
        }
        expect(Math.abs(betaBinomialLogLikelihood({ alpha, beta }, groups) - logProduct)).toBeLessThan(1e-9);
      }),
      { seed: 20261110 },
    );
  });
});

describe('the fit over all groups', () => {
  test('finds the published parameters of 6,115 families, to a likelihood no smaller than theirs', () => {
    // The hill is so flat there that the published point, two parts in ten thousand away, lies 1.5e-9 below its top.
    const found = fitted(families, 'data only');
    expect(found.alpha / PUBLISHED.alpha).toBeCloseTo(1, 3);
    expect(found.beta / PUBLISHED.beta).toBeCloseTo(1, 3);
    const gain = betaBinomialLogLikelihood(found, families) - betaBinomialLogLikelihood(PUBLISHED, families);
    expect(gain).toBeGreaterThan(-1e-7);
  });

  test('among many groups the caution weighs next to nothing', () => {
    expect(meanOf(fitted(families))).toBeCloseTo(meanOf(PUBLISHED), 4);
    expect(fitted(families).alpha / PUBLISHED.alpha).toBeGreaterThan(0.97);
  });

  test('no neighbouring parameters are likelier', () => {
    const groups = [
      { trials: 30, successes: 2 },
      { trials: 25, successes: 6 },
      { trials: 12, successes: 5 },
      { trials: 9, successes: 8 },
    ];
    const { alpha, beta } = fitted(groups, 'data only');
    const best = betaBinomialLogLikelihood({ alpha, beta }, groups);
    for (const [a, b] of [
      [1.02, 1],
      [0.98, 1],
      [1, 1.02],
      [1, 0.98],
      [1.02, 1.02],
      [0.98, 0.98],
    ] as const) {
      expect(betaBinomialLogLikelihood({ alpha: alpha * a, beta: beta * b }, groups)).toBeLessThan(best);
    }
  });

  test('one card with no surprise is half a card short of proof: the mean is 1/4, the strength 1', () => {
    // In closed form: (0 + ½) ÷ (1 + 1), and one trial says nothing of how shares differ.
    const found = fitted([{ trials: 1, successes: 0 }]);
    expect(found.alpha).toBeCloseTo(0.25, 5);
    expect(found.beta).toBeCloseTo(0.75, 5);
  });

  test('however little there is, the shares stay within 0 to 1 and the strength finite', () => {
    fc.assert(
      fc.property(someGroups, (groups) => {
        const trials = groups.reduce((sum, group) => sum + group.trials, 0);
        if (trials === 0) {
          expect(betaBinomialFit(groups)).toEqual({ undefined: { code: 'nothing-to-count' } });
          return;
        }
        const { alpha, beta } = fitted(groups);
        expect(alpha).toBeGreaterThan(0);
        expect(beta).toBeGreaterThan(0);
        expect(alpha + beta).toBeLessThan(1e4);
      }),
      { seed: 20261111, numRuns: 60 },
    );
  });

  test('where every group is alike they lend each other more than where they differ', () => {
    const alike = fitted(Array.from({ length: 6 }, () => ({ trials: 20, successes: 5 })));
    const unlike = fitted([0, 10, 20, 0, 10, 20].map((successes) => ({ trials: 20, successes })));
    expect(alike.alpha + alike.beta).toBeGreaterThan(10 * (unlike.alpha + unlike.beta));
  });

  test('knows no order of groups', () => {
    const groups = [
      { trials: 8, successes: 1 },
      { trials: 3, successes: 3 },
    ];
    expect(fitted(groups).alpha).toBeCloseTo(fitted(groups.toReversed()).alpha, 6);
  });

  test('is the share itself, mirrored, when failures are counted', () => {
    const groups = [
      { trials: 8, successes: 1 },
      { trials: 5, successes: 3 },
    ];
    const mirrored = groups.map(({ trials, successes }) => ({ trials, successes: trials - successes }));
    expect(fitted(mirrored).alpha).toBeCloseTo(fitted(groups).beta, 4);
  });
});
