import { describe, expect, test } from 'vitest';
import { censoredPredictive } from '../../src/forecast/censored-predictive.ts';
import { type PlayedPlan, planAmounts } from '../../src/forecast/plan-amounts.ts';
import { weightedPoints } from '../../src/forecast/weighted-points.ts';
import { seededRandom } from './seeded-random.ts';

const MODEL = weightedPoints([10, 20, 30, 40], [1, 1, 1, 1]);
const PLAN = 20;

function played(low: number, high = low, planPoints = PLAN): PlayedPlan {
  return { planPoints, amount: { low, high } };
}

/** What is known, without the part that is a guess: half of that lies below 0.7 of the usual plan, 20. */
function known(plans: readonly PlayedPlan[], planPoints: number, points: number): number {
  const [guessed, all] = [points === 14 ? 0.5 : Number.NaN, planAmounts(MODEL, plans, PLAN)(planPoints)];
  return (all.cdf(points) - 0.15 * guessed) / 0.85;
}

test('without sprints it is mostly the model, and a little the guess', () => {
  const { cdf, weight } = planAmounts(MODEL, [], PLAN)(PLAN);
  expect(weight).toBe(1);
  expect(cdf(14)).toBeCloseTo(0.85 * 0.25 + 0.15 * 0.5, 12);
  // One deviation of the logarithm, 4, above: 84.13% by any table.
  expect(cdf(14 * Math.exp(4))).toBeCloseTo(0.85 + 0.15 * 0.8413, 4);
  expect(cdf(-1)).toBe(0);
});

test('plans just like this one count one each, and the model as one', () => {
  // Most are equal, so none is smoothed.
  const equal = Array.from({ length: 5 }, () => played(12));
  expect(known([...equal, played(25)], PLAN, 14)).toBeCloseTo((0.25 + 5) / 7, 12);
});

test('the less alike a plan was, the less it counts', () => {
  // 57.08 = 21·e, so two steps of half a logarithm away: 0.05 + 0.95 ÷ (1 + 4 ÷ 4)² = 0.2875.
  const other = 21 * Math.E - 1;
  const { weight } = planAmounts(MODEL, [played(12, 12, other)], PLAN)(PLAN);
  expect(weight).toBeCloseTo(1.2875, 12);
  expect(known([played(12, 12, other)], PLAN, 14)).toBeCloseTo((0.25 + 0.2875) / 1.2875, 12);
});

describe('of an amount that is only bounded the model says where it lies', () => {
  test.each<[string, number, number, number]>([
    ['at least 10', 10, Number.POSITIVE_INFINITY, 0],
    ['at most 30', 0, 30, 1 / 3],
    ['at most 10', 0, 10, 1],
    ['above all that the model thinks possible', 90, Number.POSITIVE_INFINITY, 0],
  ])('%s', (_, low, high, chance) => {
    expect(known([played(low, high)], PLAN, 14)).toBeCloseTo((0.25 + chance) / 2, 12);
  });
});

test('different amounts are smoothed by Silverman’s rule: two roots of 4 and 5, with a spread of 0.5 ÷ 1.349', () => {
  // By hand: 0.9 · 0.5 ÷ 1.349 · 2^(−1/5) = 0.2904; 14 has the root 3.7417, 0.8896 deviations below 4: 18.68% by any table.
  expect(known([played(16), played(25)], PLAN, 14)).toBeCloseTo((0.25 + 0.1868) / 3, 4);
});

/** The mean of what was told of keeping a plan, of three kinds of plan, and how often it came true. */
function worlds(
  amountFor: (planPoints: number) => number,
  plans: (kind: number) => number,
): { told: number; byModel: number; came: number }[] {
  return [0.5, 1, 2].map((kind) => {
    const sums = { told: 0, byModel: 0, came: 0 };
    const teams = 300;
    for (let team = 0; team < teams; team += 1) {
      const past = Array.from({ length: 12 }, () => {
        const planPoints = plans(1);
        return played(amountFor(planPoints), undefined, planPoints);
      });
      const model = censoredPredictive(
        past.map(({ amount }) => amount),
        { centrePoints: 20, levelSpread: 0.7 },
      );
      const planPoints = plans(kind);
      sums.told += 1 - planAmounts(model, past, PLAN)(planPoints).cdf(0.8 * planPoints);
      sums.byModel += 1 - model.cdf(0.8 * planPoints);
      sums.came += Number(amountFor(planPoints) >= 0.8 * planPoints);
    }
    return { told: sums.told / teams, byModel: sums.byModel / teams, came: sums.came / teams };
  });
}

test('of teams that plan as much as they have time for, it is nearer to the truth than one model of all amounts', () => {
  const random = seededRandom(11);
  const usual = () => 20 * Math.exp(0.6 * random.normal());
  const share = () => (random.uniform() < 0.55 ? 1 : 0.5);
  const told = worlds(
    (planPoints) => share() * planPoints,
    (kind) => kind * usual(),
  );
  const off = (of: 'told' | 'byModel') => told.reduce((sum, one) => sum + Math.abs(one[of] - one.came), 0);
  expect(off('told')).toBeLessThan(0.8 * off('byModel'));
});

test('of teams that finish nothing in most sprints, the chance that the model alone tells far too low is told less low', () => {
  const random = seededRandom(7);
  const amount = () => (random.uniform() < 0.65 ? 0 : Math.max(1, Math.round(20 + 3 * random.normal())));
  const [, same] = worlds(amount, (kind) => kind * PLAN);
  const off = (chance = 0) => Math.abs(chance - (same?.came ?? 0));
  expect(off(same?.byModel)).toBeGreaterThan(0.15);
  expect(off(same?.told)).toBeLessThan(0.4 * off(same?.byModel));
});
