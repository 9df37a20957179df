import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pointsNeeded, type QueuedWork, sprintsInTurn } from '../../src/forecast/queued-work.ts';
import { releaseForecast } from '../../src/forecast/release-forecast.ts';

const work = (points: number, growthPoints = 0, growsWaiting = true): QueuedWork => ({
  points,
  growthPoints,
  growsWaiting,
});

const works = fc.array(
  fc.record({
    points: fc.integer({ min: 1, max: 200 }),
    growthPoints: fc.integer({ min: 0, max: 8 }),
    growsWaiting: fc.boolean(),
  }),
  { minLength: 1, maxLength: 5 },
);

/** Works the bodies off in small steps of time, each growing as it does. */
function stepByStep(bodies: readonly QueuedWork[], pace: number, step = 0.001): number {
  const left = bodies.map(({ points }) => points);
  let [sprints, current] = [0, 0];
  while (current < bodies.length) {
    for (const [i, { growthPoints, growsWaiting }] of bodies.entries()) {
      if (i === current || (i > current && growsWaiting)) left[i] = (left[i] as number) + growthPoints * step;
    }
    left[current] = (left[current] as number) - pace * step;
    if ((left[current] as number) <= 0) current += 1;
    sprints += step;
  }
  return sprints;
}

describe('bodies of work in turn', () => {
  test('take as long as working them off step by step', () => {
    for (const bodies of [
      [work(20), work(10, 5), work(30, 2, false)],
      [work(40, 3, false), work(40, 3, false)],
      [work(5, 8), work(80, 1), work(1)],
    ]) {
      expect(sprintsInTurn(bodies, 20)).toBeCloseTo(stepByStep(bodies, 20), 1);
    }
  });

  test('take for ever where one grows as fast as it is worked off', () => {
    expect(sprintsInTurn([work(20), work(20, 10)], 10)).toBe(Number.POSITIVE_INFINITY);
  });

  test('need the points that a steady pace finishes in the time that they take at it', () => {
    fc.assert(
      fc.property(works, fc.double({ min: 10, max: 60, noNaN: true }), (bodies, pace) => {
        const sprints = sprintsInTurn(bodies, pace);
        expect(pointsNeeded(bodies, sprints) / (pace * sprints)).toBeCloseTo(1, 6);
      }),
    );
  });

  test('need their sum where nothing grows, and one alone what it is and has grown by', () => {
    expect(pointsNeeded([work(20), work(30), work(50)], 7)).toBe(100);
    expect(pointsNeeded([work(20, 3)], 7)).toBe(41);
  });

  test('never need less than all points, nor more than if all of them grew to the end', () => {
    fc.assert(
      fc.property(works, fc.integer({ min: 1, max: 130 }), (bodies, sprints) => {
        const sum = bodies.reduce((all, { points }) => all + points, 0);
        const growth = bodies.reduce((all, { growthPoints }) => all + growthPoints, 0);
        const needed = pointsNeeded(bodies, sprints);
        expect(needed).toBeGreaterThanOrEqual(sum - 1e-6);
        expect(needed).toBeLessThanOrEqual(sum + growth * sprints + 1e-6);
      }),
    );
  });
});

describe('the forecast of a body of work behind another', () => {
  const base = {
    sprints: Array.from({ length: 12 }, () => ({ velocityPoints: 20, time: 1 })),
    startsOn: '2026-11-02',
    sprintLengthDays: 14,
    comingTimes: [1],
    scopeGrowthPoints: 0,
  };
  const sprintsOf = (forecast: ReturnType<typeof releaseForecast>) =>
    'undefined' in forecast
      ? []
      : forecast.dates.map((date) => ('undefined' in date ? Number.NaN : date.sprints));

  test('is that of the sum of both', () => {
    const ahead = [{ ...work(60), growthDeviation: 0 }];
    expect(releaseForecast({ ...base, backlogPoints: 40, ahead })).toEqual(
      releaseForecast({ ...base, backlogPoints: 100 }),
    );
  });

  test('holds in simulated sprints as often as it says', () => {
    // A team whose pace is a lognormal multiple of 20 with the deviation that its forecast believes in, and whose sprints
    // don't scatter; the first body grows by 4 a sprint until it is done, the second by 2. Quantiles in place of chance.
    const ahead = [{ ...work(60, 4), growthDeviation: 0 }];
    const second = { ...base, backlogPoints: 40, scopeGrowthPoints: 2, ahead };
    const told = sprintsOf(releaseForecast(second));
    const alone = sprintsOf(releaseForecast({ ...base, backlogPoints: 100 }));
    // The pace at which 100 points take as long as each quantile of the forecast of settled work …
    const atPace = alone.map((sprints) => sprintsInTurn([work(60, 4), work(40, 2)], 100 / sprints));
    // … makes the two that grow take as long, but for the straight lines between the ends of sprints.
    for (const [i, sprints] of atPace.entries()) expect(told[i]).toBeCloseTo(sprints, 0);
  });

  test('comes no sooner where growth is unsure, and each body comes after the one before it', () => {
    fc.assert(
      fc.property(works, (bodies) => {
        const ahead = bodies.map((body) => ({ ...body, growthDeviation: 0 }));
        let before = [0, 0, 0];
        for (const [i, { points, growthPoints, growsWaiting }] of bodies.entries()) {
          const question = {
            ...base,
            backlogPoints: points,
            scopeGrowthPoints: growthPoints,
            growsInTurnOnly: !growsWaiting,
            ahead: ahead.slice(0, i),
          };
          const dates = sprintsOf(releaseForecast(question));
          for (const [j, sprints] of dates.entries()) {
            if (Number.isNaN(sprints)) continue;
            expect(sprints).toBeGreaterThanOrEqual((before[j] ?? 0) - 1e-6);
          }
          before = dates;
        }
      }),
      { numRuns: 40 },
    );
  });
});
