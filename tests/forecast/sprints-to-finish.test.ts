import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chancesToFinish, sprintSums } from '../../src/forecast/sprints-to-finish.ts';
import { type WeightedPoints, weightedPoints } from '../../src/forecast/weighted-points.ts';
import { spreadsheet } from './spreadsheet.ts';

function alike(...values: number[]): WeightedPoints {
  return weightedPoints(
    values,
    values.map(() => 1),
  );
}

function chances(
  backlogPoints: number,
  velocity: WeightedPoints,
  { paceDeviation = 0, scopeGrowthPoints = 0, most = 20 } = {},
): number[] {
  return chancesToFinish(
    { backlogPoints, velocity, paceDeviation, scopeGrowthPoints },
    { enough: Number.POSITIVE_INFINITY, most },
  );
}

const anyVelocities = fc
  .array(
    fc.integer({ min: 0, max: 20 }).map((n) => n / 2),
    { minLength: 1, maxLength: 6 },
  )
  .filter((values) => values.some((value) => value > 0));

describe('exact values from outside', () => {
  const die = alike(1, 2, 3, 4, 5, 6);

  test.each([
    // Closed forms by counting throws: 6/36, 135/216, 1170/1296.
    [2, 1 / 6],
    [3, 0.625],
    [4, 0.902778],
  ])('ten points with a fair die for velocity: within %s sprints with chance %s', (sprints, expected) => {
    expect(chances(10, die)[sprints]).toBeCloseTo(expected, 6);
  });

  test('a fair die takes (7/6)^5 throws in the mean to reach 6', () => {
    // Closed form: the mean is Σ P(T > k).
    const mean = chances(6, die).reduce((sum, chance) => sum + (1 - chance), 0);
    expect(mean).toBeCloseTo((7 / 6) ** 5, 9);
  });

  test('five points at one or none a sprint: the negative binomial distribution with r = 5, p = 0.4', () => {
    const bernoulli = weightedPoints([0, 1], [0.6, 0.4]);
    const reached = chances(5, bernoulli);
    // Boost.Math's documented example: the tenth trial is the fifth success.
    expect((reached[10] as number) - (reached[9] as number)).toBeCloseTo(0.1003290624, 10);
    expect(reached[8]).toBeCloseTo(0.1736704, 10);
  });
});

describe('agrees with a spreadsheet to 1e-9', () => {
  test('on sums of velocities that are one amount or nothing: the binomial distribution', () => {
    const cases = [3, 7, 12].flatMap((needed) => [0.25, 0.5, 0.9].map((chance) => ({ needed, chance })));
    const expected = spreadsheet(
      cases.map(({ needed, chance }) => `1-BINOM.DIST(${needed - 1},20,${chance},TRUE())`),
    );
    for (const [i, { needed, chance }] of cases.entries()) {
      // 2.5 points in each sprint that finishes anything.
      const reached = chances(needed * 2.5, weightedPoints([0, 2.5], [1 - chance, chance]));
      expect(reached[20]).toBeCloseTo(expected[i] as number, 9);
    }
  });

  test('on a steady velocity whose pace wanders: the lognormal distribution', () => {
    const sprints = [1, 2, 3, 5, 8, 12];
    const expected = spreadsheet(sprints.map((k) => `NORM.S.DIST(LN(${k}*8/30)/0.5,TRUE())`));
    const reached = chances(30, alike(8), { paceDeviation: 0.5, most: 12 });
    // Beyond three deviations of the pace a total counts as enough.
    for (const [i, k] of sprints.entries()) expect(reached[k]).toBeCloseTo(expected[i] as number, 9);
  });
});

describe('sums of sprints', () => {
  test('are what all sequences of velocities give', () => {
    fc.assert(
      fc.property(anyVelocities, fc.integer({ min: 1, max: 4 }), (velocities, sprints) => {
        let totals = [0];
        for (let k = 0; k < sprints; k += 1)
          totals = totals.flatMap((total) => velocities.map((v) => total + v));
        const sums = sprintSums(alike(...velocities), () => 40);
        let sum = sums.next().value;
        while (sum.sprints < sprints) sum = sums.next().value;
        for (const [i, chance] of sum.chances.entries()) {
          const count = totals.filter((total) => total === i * sum.unitPoints).length;
          expect(chance).toBeCloseTo(count / totals.length, 9);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('hold all of the chance, within the cap or beyond it', () => {
    fc.assert(
      fc.property(anyVelocities, fc.integer({ min: 0, max: 60 }), (velocities, cap) => {
        for (const { sprints, chances: within, beyondChance } of sprintSums(
          alike(...velocities),
          () => cap,
        )) {
          expect(within.reduce((sum, chance) => sum + chance, beyondChance)).toBeCloseTo(1, 10);
          if (sprints === 12) break;
        }
      }),
    );
  });
});

test('chances begin at 0, never fall and stay within 1', () => {
  const anyCase = fc.record({
    backlogPoints: fc.integer({ min: 1, max: 60 }),
    paceDeviation: fc.constantFrom(0, 0.3, 0.6),
    scopeGrowthPoints: fc.constantFrom(0, 0.5, 2),
  });
  fc.assert(
    fc.property(anyVelocities, anyCase, (velocities, { backlogPoints, ...rest }) => {
      const reached = chances(backlogPoints, alike(...velocities), rest);
      expect(reached[0]).toBe(0);
      expect(reached).toEqual(reached.toSorted((a, b) => a - b));
      expect(reached.at(-1)).toBeLessThanOrEqual(1);
    }),
  );
});

describe('scope that grows', () => {
  test('counts as backlog that grows with each sprint', () => {
    expect(chances(10, alike(4), { scopeGrowthPoints: 1.5, most: 5 })).toEqual([0, 0, 0, 0, 1, 1]);
  });

  test('never makes work finish sooner', () => {
    const settled = chances(20, alike(2, 5, 8), { paceDeviation: 0.5 });
    const growing = chances(20, alike(2, 5, 8), { paceDeviation: 0.5, scopeGrowthPoints: 1 });
    for (const [k, chance] of growing.entries()) expect(chance).toBeLessThanOrEqual(settled[k] as number);
  });

  test('the chance that is kept from the best sprint so far is at most 7% below that of stopping in time', () => {
    // All sequences of six sprints, stopped as soon as the work of the moment is finished.
    const velocities = [0, 4, 8];
    const reached = chances(12, alike(...velocities), { scopeGrowthPoints: 2, most: 6 });
    let open = [{ total: 0, chance: 1 }];
    let finished = 0;
    let furthest = 0;
    for (let k = 1; k <= 6; k += 1) {
      const next = open.flatMap(({ total, chance }) =>
        velocities.map((v) => ({ total: total + v, chance: chance / velocities.length })),
      );
      finished += next
        .filter(({ total }) => total >= 12 + 2 * k)
        .reduce((sum, { chance }) => sum + chance, 0);
      open = next.filter(({ total }) => total < 12 + 2 * k);
      expect(reached[k]).toBeLessThanOrEqual(finished + 1e-12);
      furthest = Math.max(furthest, finished - (reached[k] as number));
    }
    expect(furthest).toBeGreaterThan(0);
    expect(furthest).toBeLessThan(0.07);
  });
});
