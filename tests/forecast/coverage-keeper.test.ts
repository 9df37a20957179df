import { describe, expect, test } from 'vitest';
import {
  type CoverageKeeper,
  conformalRank,
  depthOf,
  depthsOf,
  intervalsOf,
  LEAST_SCORES,
  NEW_KEEPER,
  WIDE,
  withOutcome,
} from '../../src/forecast/coverage-keeper.ts';
import type { OutcomePlace } from '../../src/forecast/told-chances.ts';
import { type WeightedPoints, weightedPoints } from '../../src/forecast/weighted-points.ts';
import { seededRandom } from './seeded-random.ts';

function alike(values: readonly number[]): ReturnType<typeof weightedPoints> {
  return weightedPoints(
    values,
    values.map(() => 1),
  );
}

const TEN = alike([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);

function placeIn(distribution: WeightedPoints, points: number): OutcomePlace {
  // Points come in halves.
  return { lessChance: distribution.cdf(points - 0.25), atMostChance: distribution.cdf(points) };
}

describe('the rank of split conformal prediction is (n + 1)·chance, rounded up where it must never be too low', () => {
  test.each([
    // Vovk, Gammerman and Shafer 2005: nine scores are the least for 90%.
    [8, 0.9, 9],
    [9, 0.9, 9],
    [19, 0.9, 18],
    // In floats (9 + 1)·(1 − 0.7) is 3.0000000000000004.
    [9, 1 - 0.7, 3],
  ])('of %s scores at %s it is %s', (scores, chance, rank) => {
    expect(Math.ceil(conformalRank(scores, chance))).toBe(rank);
  });
});

test('between two ranks the depth lies between their scores', () => {
  // (5 + 1)·0.8 = 4.8, and (5 + 1)·0.5 is the third.
  const keeper: CoverageKeeper = { scores: [0.1, 0.2, 0.4, 0.5, 0.9], narrowLevel: 0.5, wideLevel: 0.8 };
  const { narrow, wide } = depthsOf(keeper);
  expect(narrow).toBe(0.4);
  expect(wide).toBeCloseTo(0.5 + 0.8 * 0.4, 12);
});

test('few scores of a forecast that is right hold as often as promised, and not more often', () => {
  const random = seededRandom(5);
  for (const scores of [6, 8, 11]) {
    let held = 0;
    for (let trial = 0; trial < 20_000; trial += 1) {
      const past = Array.from({ length: scores }, () => random.uniform());
      const { wide } = depthsOf({ scores: past, narrowLevel: 0.5, wideLevel: WIDE });
      if (random.uniform() <= wide) held += 1;
    }
    expect(held / 20_000).toBeCloseTo(WIDE, 1.5);
  }
});

describe('the depth of an outcome is how much of the distribution an interval must take in to hold it', () => {
  test.each([
    [5, 0],
    [6, 0],
    [9, 0.6],
    [1, 0.8],
    [0, 1],
    [11, 1],
  ])('%s lies at %s', (outcome, depth) => {
    expect(depthOf(placeIn(TEN, outcome))).toBeCloseTo(depth, 12);
  });

  test('an amount as likely as all others together lies at 0', () => {
    expect(depthOf(placeIn(weightedPoints([0, 1, 2], [2, 1, 1]), 0))).toBe(0);
  });
});

test('without past scores both intervals span the whole distribution', () => {
  const { narrow, wide } = intervalsOf(NEW_KEEPER, TEN);
  expect([narrow, wide]).toEqual([
    { low: 1, high: 10 },
    { low: 1, high: 10 },
  ]);
});

test('a wide interval can first be promised with four scores', () => {
  const promised = Array.from({ length: 6 }, (_, scores) => conformalRank(scores, WIDE) <= scores);
  expect(promised.indexOf(true)).toBe(LEAST_SCORES);
});

test('the wide interval holds the narrow one even when the scores of late would have it otherwise', () => {
  const keeper: CoverageKeeper = { scores: [0, 0.1, 0.3, 0.5, 0.9], narrowLevel: 0.9, wideLevel: 0.2 };
  const { narrow, wide } = intervalsOf(keeper, TEN);
  expect(wide).toEqual(narrow);
});

test('after a miss the level rises, after a hit it falls a little, by a fifth at first', () => {
  // With four scores and levels of a half and four fifths the intervals take in 0.4 and 0.9 of the distribution.
  const keeper: CoverageKeeper = { scores: [0.2, 0.4, 0.4, 0.9], narrowLevel: 0.5, wideLevel: 0.8 };
  expect(intervalsOf(keeper, TEN)).toEqual({ narrow: { low: 3, high: 7 }, wide: { low: 1, high: 10 } });
  const after = withOutcome(keeper, depthsOf(keeper), placeIn(TEN, 8));
  expect(after.narrowLevel).toBeCloseTo(0.6, 12);
  expect(after.wideLevel).toBeCloseTo(0.76, 12);
  expect(after.scores).toHaveLength(5);
});

test('the more scores there are, the less one of them moves the level', () => {
  const moves = [10, 39, 79, 200].map((scores) => {
    const keeper: CoverageKeeper = { ...NEW_KEEPER, scores: Array.from({ length: scores }, () => 0.5) };
    return withOutcome(keeper, depthsOf(keeper), placeIn(TEN, 5)).wideLevel - WIDE;
  });
  for (const [i, expected] of [-0.04, -0.02, -0.01, -0.01].entries())
    expect(moves[i]).toBeCloseTo(expected, 12);
});

test('a team alone whose outcomes fall between what was forecast is held about as often as promised in its second dozen sprints', () => {
  const random = seededRandom(31);
  const lumpy = weightedPoints([0, 10, 20, 30, 40], [1, 2, 14, 2, 1]);
  let held = 0;
  for (let team = 0; team < 300; team += 1) {
    let keeper = NEW_KEEPER;
    for (let sprint = 0; sprint < 24; sprint += 1) {
      const outcome = Math.round(20 + 4 * random.normal());
      const { wide } = intervalsOf(keeper, lumpy);
      if (sprint >= 12 && wide.low <= outcome && outcome <= wide.high) held += 1;
      keeper = withOutcome(keeper, depthsOf(keeper), placeIn(lumpy, outcome));
    }
  }
  expect(held / (300 * 12)).toBeGreaterThan(0.74);
  expect(held / (300 * 12)).toBeLessThan(0.86);
});

test('an outcome counts as held just where the interval says so', () => {
  const random = seededRandom(11);
  for (let trial = 0; trial < 500; trial += 1) {
    const scores = Array.from({ length: 12 }, () => Math.round(random.uniform() * 10) / 10);
    const keeper: CoverageKeeper = { scores, narrowLevel: 0.5, wideLevel: 0.8 };
    const distribution = alike(Array.from({ length: 7 }, () => Math.floor(random.uniform() * 12) / 2));
    const outcome = Math.floor(random.uniform() * 14) / 2 - 0.5;
    const { narrow, wide } = intervalsOf(keeper, distribution);
    const after = withOutcome(keeper, depthsOf(keeper), placeIn(distribution, outcome));
    expect(after.narrowLevel < keeper.narrowLevel).toBe(narrow.low <= outcome && outcome <= narrow.high);
    expect(after.wideLevel < keeper.wideLevel).toBe(wide.low <= outcome && outcome <= wide.high);
  }
});

test('the level stops beyond 0 and 1, so that it comes back at once', () => {
  const [always, never] = [placeIn(TEN, 5), placeIn(TEN, 11)];
  let keeper = NEW_KEEPER;
  for (let sprint = 0; sprint < 100; sprint += 1) keeper = withOutcome(keeper, depthsOf(keeper), never);
  expect(keeper.narrowLevel).toBeCloseTo(1.05, 12);
  keeper = withOutcome(keeper, depthsOf(keeper), always);
  expect(keeper.narrowLevel).toBeLessThan(1.05);
  for (let sprint = 0; sprint < 200; sprint += 1) keeper = withOutcome(keeper, depthsOf(keeper), always);
  expect(keeper.narrowLevel).toBeCloseTo(-0.05, 12);
});

describe('outcomes that lie quite differently from what the distribution says are held as often as promised', () => {
  test.each([
    ['wider', 3],
    ['narrower', 0.4],
  ])('%s ones', (_, spread) => {
    const random = seededRandom(7);
    const distribution = alike(Array.from({ length: 201 }, (_unused, i) => i));
    let keeper = NEW_KEEPER;
    let narrowHits = 0;
    let wideHits = 0;
    for (let sprint = 0; sprint < 400; sprint += 1) {
      const outcome = Math.round(100 + 20 * spread * random.normal());
      const { narrow, wide } = intervalsOf(keeper, distribution);
      if (narrow.low <= outcome && outcome <= narrow.high) narrowHits += 1;
      if (wide.low <= outcome && outcome <= wide.high) wideHits += 1;
      keeper = withOutcome(keeper, depthsOf(keeper), placeIn(distribution, outcome));
    }
    expect(Math.abs(narrowHits / 400 - 0.5)).toBeLessThan(0.04);
    expect(Math.abs(wideHits / 400 - 0.8)).toBeLessThan(0.03);
  });
});
