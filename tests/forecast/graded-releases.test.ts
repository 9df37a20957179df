import { describe, expect, test } from 'vitest';
import {
  AS_TOLD,
  type GradedRelease,
  gradedReleases,
  toldChances,
} from '../../src/forecast/graded-releases.ts';
import { chanceFinished, type TeamPace, teamPace } from '../../src/forecast/team-pace.ts';

const sprintsOf = (points: readonly number[]) =>
  points.map((velocityPoints) => ({ velocityPoints, time: 1 }));
const grade = (chance: number, change: Partial<GradedRelease> = {}): GradedRelease => ({
  team: 'A',
  sprintsWorth: 6,
  chance,
  isFinished: true,
  ...change,
});

describe('grades', () => {
  test('are the chance that was given to the moment of finishing, by a straight line within the sprint', () => {
    const [three, six] = gradedReleases('A', sprintsOf([4, 4, 4, 4, 4, 8]));
    // 12 points after 12 and 20: at the end of the first coming sprints 4, 8 and 16, so halfway through the third.
    const pace = teamPace(sprintsOf([4, 4, 4])) as TeamPace;
    const [at2, at3] = [2, 3].map((time) => chanceFinished(pace, 12, time)) as [number, number];
    expect(three).toEqual({
      team: 'A',
      sprintsWorth: 3,
      chance: expect.closeTo((at2 + at3) / 2, 12),
      isFinished: true,
    });
    expect(six).toMatchObject({ sprintsWorth: 6, isFinished: false, chance: chanceFinished(pace, 24, 3) });
  });

  test('exist from three sprints on, for three sizes each, where something was finished', () => {
    expect(gradedReleases('A', sprintsOf([4, 4, 4]))).toEqual([]);
    expect(gradedReleases('A', sprintsOf([4, 4, 4, 4, 4]))).toHaveLength(6);
    expect(gradedReleases('A', sprintsOf([0, 0, 0, 0, 4]))).toEqual([]);
  });
});

describe('chances told and come true', () => {
  test('are the same without grades', () => {
    const told = toldChances([], 'A', 6);
    for (const chance of [0, 0.15, 0.5, 0.85, 1]) {
      expect(told.cameTrue(chance)).toBeCloseTo(AS_TOLD.cameTrue(chance), 12);
      expect(told.toldFor(chance)).toBeCloseTo(AS_TOLD.toldFor(chance), 12);
    }
  });

  test('are a mean of ten even grades and the graded ones where all of them are finished', () => {
    const chances = [0.1, 0.3, 0.3, 0.7];
    const told = toldChances(
      chances.map((chance) => grade(chance)),
      'A',
      6,
    );
    for (const at of [0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9]) {
      const graded = chances.filter((chance) => chance <= at).length;
      expect(told.cameTrue(at)).toBeCloseTo((10 * at + graded) / 14, 12);
    }
  });

  test('let work that is not finished count as later, by the product limit', () => {
    // By hand: 10 even grades, one finished at 0.2, one unfinished at 0.5, one finished at 0.8.
    const told = toldChances([grade(0.2), grade(0.5, { isFinished: false }), grade(0.8)], 'A', 6);
    const later = [
      [0.2, (8 + 2) / 13],
      [0.5, ((8 + 2) / 13) * ((5 + 2) / (8 + 2))],
      [0.8, ((8 + 2) / 13) * ((5 + 2) / (8 + 2)) * ((2 + 1) / (5 + 1)) * (2 / 3)],
    ] as const;
    for (const [at, expected] of later) expect(told.cameTrue(at)).toBeCloseTo(1 - expected, 12);
  });

  test('lead back and forth', () => {
    const told = toldChances(
      [0.1, 0.2, 0.45, 0.5, 0.5, 0.9].map((chance, i) => grade(chance, { isFinished: i !== 3 })),
      'A',
      6,
    );
    for (let chance = 0.05; chance < 1; chance += 0.05) {
      const needed = told.toldFor(chance);
      expect(told.cameTrue(needed)).toBeGreaterThanOrEqual(chance - 1e-12);
      expect(told.cameTrue(needed - 1e-6)).toBeLessThanOrEqual(chance);
    }
  });

  test('go by the own team twice as much as by another, and hardly by other sizes', () => {
    const at = (change: Partial<GradedRelease>) =>
      toldChances(
        Array.from({ length: 10 }, () => grade(0.2, change)),
        'A',
        6,
      ).cameTrue(0.2);
    expect(at({})).toBeCloseTo((2 + 10) / 20, 12);
    expect(at({ team: 'B' })).toBeCloseTo((2 + 5) / 15, 12);
    expect(at({ sprintsWorth: 3 })).toBeLessThan(0.27);
    expect(toldChances([grade(0.2, { sprintsWorth: 10 })], 'A', 40).cameTrue(0.2)).toBeCloseTo(3 / 11, 12);
  });
});
