import { describe, expect, test } from 'vitest';
import { growthPerMemberDay, type MeasuredSprint, medianBaseline } from '../../src/sprint/baseline.ts';

const sprint = (
  velocityPoints: number | undefined,
  workingDays = 10,
  memberDays: number | undefined = 40,
): MeasuredSprint => ({ name: 'Harbour', velocityPoints, workingDays, memberDays });

describe('the median baseline', () => {
  test('is made of velocity and working time, each by itself, of the first three sprints with a velocity', () => {
    const sprints = [
      sprint(undefined),
      sprint(0),
      sprint(30, 5, 20),
      sprint(10, 10, 50),
      sprint(12, 9, 40),
      sprint(99),
    ];
    expect(medianBaseline(sprints)).toEqual({
      name: undefined,
      velocityPoints: 12,
      time: { workingDays: 9, memberDays: 40 },
    });
  });

  test('has no working time where that of one sprint isn’t known', () => {
    const unknown = { ...sprint(10), memberDays: undefined };
    expect(medianBaseline([sprint(30), unknown, sprint(12)])?.time).toBeUndefined();
  });

  test('is none before there are three', () => {
    expect(medianBaseline([sprint(0), sprint(3), sprint(4)])).toBeUndefined();
  });
});

describe('growth for each member-day', () => {
  const baseline = { velocityPoints: 10, time: { workingDays: 10, memberDays: 40 } };

  test.each([
    ['twice the team, twice the points', 20, { workingDays: 10, memberDays: 80 }, 1],
    ['half the length, half the points', 5, { workingDays: 5, memberDays: 20 }, 1],
    ['half the length, the same points', 10, { workingDays: 5, memberDays: 20 }, 2],
    ['a team larger by more than a tenth', 11, { workingDays: 10, memberDays: 44.5 }, 440 / 445],
  ])('is what remains of %s', (_, velocity, time, growth) => {
    expect(growthPerMemberDay(velocity, time, baseline)).toBeCloseTo(growth, 12);
  });

  test('is left out where length and size are within a tenth, or aren’t known', () => {
    expect(growthPerMemberDay(20, { workingDays: 10, memberDays: 44 }, baseline)).toBeUndefined();
    expect(growthPerMemberDay(20, { workingDays: 9, memberDays: 36 }, baseline)).toBeUndefined();
    expect(growthPerMemberDay(20, undefined, baseline)).toBeUndefined();
    expect(
      growthPerMemberDay(20, { workingDays: 5, memberDays: 40 }, { velocityPoints: 10 }),
    ).toBeUndefined();
  });
});
