import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chanceFinished, type PacedSprint, teamPace, teamPaces } from '../../src/forecast/team-pace.ts';
import { spreadsheet } from './spreadsheet.ts';

const sprintsOf = (points: readonly number[], time = 10): PacedSprint[] =>
  points.map((velocityPoints) => ({ velocityPoints, time }));

const paceOf = (sprints: readonly PacedSprint[]) => {
  const pace = teamPace(sprints);
  if (pace === undefined) throw new Error('no pace');
  return pace;
};

describe('the pace', () => {
  test('is points by time, however long the sprints are', () => {
    const mixed = [...sprintsOf([10, 10, 10], 5), ...sprintsOf([20, 20], 10)];
    expect(paceOf(mixed).pointsPerTime).toBeCloseTo(2, 12);
    expect(paceOf(mixed).scatter).toBeCloseTo(0, 12);
  });

  test('counts a sprint a quarter that is five sprints older: weights 1, 2^−⅖, 2^−⅘ and so on', () => {
    const total = [0, 1, 2, 3, 4, 5].reduce((sum, age) => sum + 2 ** (-age / 2.5), 0);
    expect(paceOf(sprintsOf([10, 0, 0, 0, 0, 0], 1)).pointsPerTime).toBeCloseTo(2.5 / total, 12);
    expect(paceOf(sprintsOf([0, 0, 0, 0, 0, 10], 1)).pointsPerTime).toBeCloseTo(10 / total, 12);
  });

  test('is made from the latest 24 sprints', () => {
    const latest = Array.from({ length: 24 }, (_, i) => 20 + (i % 5));
    expect(paceOf(sprintsOf([900, ...latest])).pointsPerTime).toBe(paceOf(sprintsOf(latest)).pointsPerTime);
  });

  test('needs three sprints and some points', () => {
    expect(teamPace(sprintsOf([8, 9]))).toBeUndefined();
    expect(teamPace(sprintsOf([0, 0, 0]))).toBeUndefined();
    expect(teamPace(sprintsOf([0, 0, 1]))).toBeDefined();
  });

  test('after each number of sprints is the pace of those alone', () => {
    const sprints = sprintsOf([5, 9, 0, 7, 12, 8, 3, 9, 14, 6, 9, 2]);
    const paceAfter = teamPaces(sprints);
    for (let end = 0; end <= sprints.length; end += 1) {
      expect(paceAfter(end)).toEqual(teamPace(sprints.slice(0, end)));
    }
  });
});

describe('how far the pace wanders', () => {
  test('is believed to be 0.5 in the logarithm before a team has shown any', () => {
    expect(paceOf(sprintsOf([30, 30, 30])).wander).toBeCloseTo(0.25, 12);
  });

  test('comes down with every stretch in which it did not: 5·0.25 ÷ (5 + n)', () => {
    // Fifty sprints make 43 stretches of five that begin after the third; they overlap, so they count as 8.6.
    expect(paceOf(sprintsOf(Array.from({ length: 50 }, () => 30))).wander).toBeCloseTo(1.25 / 13.6, 12);
  });

  test('goes up for a team that jumps', () => {
    const jumping = Array.from({ length: 40 }, (_, i) => (Math.floor(i / 8) % 2 === 0 ? 5 : 40));
    expect(paceOf(sprintsOf(jumping)).wander).toBeGreaterThan(0.25);
  });
});

describe('the chance to be finished', () => {
  test('of a steady pace that wanders is the lognormal distribution of a spreadsheet', () => {
    const times = [1, 2, 3, 5, 8, 12];
    const expected = spreadsheet(times.map((time) => `NORM.S.DIST(LN(${time}*8/30)/0.5,TRUE())`));
    const pace = { pointsPerTime: 8, scatter: 0, wander: 0.25 };
    expect(times.map((time) => chanceFinished(pace, 30, time))).toEqual(
      expected.map((chance) => expect.closeTo(chance, 9)),
    );
  });

  test('of a fair die is within 6 percentage points of all sequences of three to twelve throws', () => {
    // Mean 3.5 and variance 35 ÷ 12, a closed form.
    const die = { pointsPerTime: 3.5, scatter: 35 / 12 / 3.5 ** 2, wander: 0 };
    let totals = new Map([[0, 1]]);
    for (let throws = 1; throws <= 12; throws += 1) {
      const next = new Map<number, number>();
      for (const [total, chance] of totals)
        for (let eyes = 1; eyes <= 6; eyes += 1)
          next.set(total + eyes, (next.get(total + eyes) ?? 0) + chance / 6);
      totals = next;
      if (throws < 3) continue;
      for (let points = throws; points <= 6 * throws; points += 1) {
        const exact = [...totals].reduce((sum, [total, chance]) => sum + (total >= points ? chance : 0), 0);
        // A total of whole eyes is reached from half an eye below.
        expect(Math.abs(chanceFinished(die, points - 0.5, throws) - exact)).toBeLessThan(0.06);
      }
    }
  });

  test('rises with time and falls with points', () => {
    const any = fc.record({
      pointsPerTime: fc.double({ min: 0.1, max: 20, noNaN: true }),
      scatter: fc.double({ min: 0, max: 10, noNaN: true }),
      wander: fc.double({ min: 0.01, max: 2, noNaN: true }),
    });
    fc.assert(
      fc.property(
        any,
        fc.integer({ min: 1, max: 500 }),
        fc.integer({ min: 1, max: 50 }),
        (pace, points, time) => {
          const chance = chanceFinished(pace, points, time);
          expect(chance).toBeGreaterThanOrEqual(0);
          expect(chance).toBeLessThanOrEqual(1);
          expect(chanceFinished(pace, points + 5, time)).toBeLessThanOrEqual(chance);
        },
      ),
    );
  });

  test('is none without time, and all or nothing without any doubt', () => {
    const sure = { pointsPerTime: 2, scatter: 0, wander: 0 };
    expect(chanceFinished(sure, 10, 0)).toBe(0);
    expect([4.9, 5, 5.1].map((time) => chanceFinished(sure, 10, time))).toEqual([0, 1, 1]);
  });
});
