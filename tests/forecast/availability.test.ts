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
      comingTime: 40,
      assumed: undefined,
      isComingAssumed: false,
    });
  });

  test('takes the members of that time to have been there where nobody knows the days', () => {
    // 5 × 10 and 2 × 10 member-days.
    const past = [{ ...time(10), membersThen: 5 }, { ...time(10), membersThen: 2 }, time(10, 40)];
    expect(relativeTime(past, COMING)).toMatchObject({
      factors: [0.8, 2, 1],
      assumed: { sprints: 2, members: 'members-then' },
    });
  });

  test('else as many members as in the sprints around it', () => {
    // 4 members a day in the only sprint that says.
    expect(relativeTime([time(10), time(10, 40), time(5)], COMING)).toMatchObject({
      factors: [1, 1, 2],
      assumed: { sprints: 2, members: 'members-around' },
    });
    // Of the nearest three (40, 40 and the holidays' 5), however many there were later.
    const grown = [time(10), time(10, 5), time(10, 40), time(10, 40), time(10, 80), time(10, 80)];
    expect(relativeTime(grown, COMING).factors[0]).toBe(1);
  });

  test('else as many as today, and says so', () => {
    expect(relativeTime([time(10), time(5)], COMING)).toMatchObject({
      factors: [0.8, 1.6],
      measuredBy: 'member-days',
      assumed: { sprints: 2, members: 'members-now' },
    });
  });

  test('takes everybody to be there where nobody knows who will be away', () => {
    const coming = { workingDays: 10, memberDays: undefined, memberDaysWhenAllThere: 80 };
    expect(relativeTime([time(10, 40)], coming)).toEqual({
      factors: [2],
      measuredBy: 'member-days',
      comingTime: 80,
      assumed: undefined,
      isComingAssumed: true,
    });
  });

  test('is measured by working days when members are not known at all', () => {
    const coming = { workingDays: 9, memberDays: undefined, memberDaysWhenAllThere: undefined };
    expect(relativeTime([time(10), time(6)], coming)).toEqual({
      factors: [0.9, 1.5],
      measuredBy: 'working-days',
      comingTime: 9,
      assumed: undefined,
      isComingAssumed: true,
    });
  });

  test('without days every sprint counts alike', () => {
    expect(relativeTime([time(), time(10, 50)], { ...COMING, memberDays: undefined })).toMatchObject({
      factors: [1, 1],
      measuredBy: 'sprints',
      comingTime: undefined,
    });
  });

  test('a past sprint without any time cannot be compared with', () => {
    expect(relativeTime([time(10, 0), time(10, 40)], COMING).factors).toEqual([undefined, 1]);
  });

  test('of no sprints there is nothing to measure', () => {
    expect(relativeTime([], COMING).factors).toEqual([]);
  });
});
