import { describe, expect, test } from 'vitest';
import type { ComingTime, WorkingTime } from '../../src/forecast/availability.ts';
import { relativeTime } from '../../src/forecast/availability.ts';

const COMING: ComingTime = { workingDays: 10, memberDays: 40, memberDaysWhenAllThere: 50 };

function time(workingDays?: number, memberDays?: number): WorkingTime {
  return { workingDays, memberDays };
}

describe('the working time of the coming sprint beside past ones', () => {
  test('is measured by member-days where they are known', () => {
    expect(relativeTime([time(10, 50), time(8, 32)], COMING)).toEqual({
      factors: [0.8, 1.25],
      measuredBy: 'member-days',
      assumedSprints: 0,
      isComingAssumed: false,
    });
  });

  test('takes the usual number of members to have been there where it is not known', () => {
    // 4 members a day in the only sprint that says.
    expect(relativeTime([time(10), time(10, 40), time(5)], COMING)).toEqual({
      factors: [1, 1, 2],
      measuredBy: 'member-days',
      assumedSprints: 2,
      isComingAssumed: false,
    });
  });

  test('assumes that all members were there where no past sprint says', () => {
    expect(relativeTime([time(10), time(5)], COMING)).toEqual({
      factors: [0.8, 1.6],
      measuredBy: 'member-days',
      assumedSprints: 2,
      isComingAssumed: false,
    });
  });

  test('is measured by working days when members are not known at all', () => {
    const coming = { workingDays: 9, memberDays: undefined, memberDaysWhenAllThere: undefined };
    expect(relativeTime([time(10), time(6)], coming)).toEqual({
      factors: [0.9, 1.5],
      measuredBy: 'working days',
      assumedSprints: 2,
      isComingAssumed: true,
    });
  });

  test('without days every sprint counts alike', () => {
    expect(relativeTime([time(), time(10, 50)], COMING)).toMatchObject({
      factors: [1, 1],
      measuredBy: 'sprints',
    });
  });

  test('a past sprint without any time cannot be compared with', () => {
    expect(relativeTime([time(10, 0), time(10, 40)], COMING).factors).toEqual([undefined, 1]);
  });

  test('of no sprints there is nothing to measure', () => {
    expect(relativeTime([], COMING).factors).toEqual([]);
  });
});
