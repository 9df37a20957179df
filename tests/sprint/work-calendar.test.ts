/** When a team and its members work. No source: the rules are the project's own. */
import { describe, expect, test } from 'vitest';
import type { Weekday } from '../../src/sprint/calendar.ts';
import {
  isLastOfWeek,
  memberDaysOf,
  memberShareOf,
  NO_DAYS_OFF,
  type OwnCalendar,
  teamShareOf,
  wholeMembersOn,
  withDaysOff,
  withWeekdays,
  workingDaysOf,
} from '../../src/sprint/work-calendar.ts';

const [MON, TUE, WED, THU, FRI, SAT] = ['02', '03', '04', '05', '06', '07'].map(
  (day) => `2026-11-${day}`,
) as [string, string, string, string, string, string];
const WEEK = [MON, TUE, WED, THU, FRI];
const TEAM = { workingDays: [1, 2, 3, 4, 5], daysOff: { full: [TUE], half: [THU] } };
const FULL_TIME: OwnCalendar = {
  worksOn: undefined,
  worksOnBefore: [],
  daysOff: NO_DAYS_OFF,
  joinedOn: undefined,
  leftOn: undefined,
};

describe('a team', () => {
  test('works on its weekdays, without days off, and on half days by half', () => {
    expect([MON, TUE, THU, SAT].map((day) => teamShareOf(TEAM, day))).toEqual([1, 0, 0.5, 0]);
    expect(workingDaysOf(TEAM, MON, SAT)).toEqual([MON, WED, THU, FRI]);
  });
});

describe('the last day of a week', () => {
  // 7 to 13 November 2026: Saturday to Friday.
  const week = ['07', '08', '09', '10', '11', '12', '13'].map((day) => `2026-11-${day}`);
  const lastOf = (workingDays: Weekday[], daysOff = NO_DAYS_OFF) =>
    week.filter((day) => isLastOfWeek({ workingDays, daysOff }, day)).map((day) => day.slice(-2));

  test('is Friday, or the team’s last working day before it', () => {
    expect(lastOf([1, 2, 3, 4, 5])).toEqual(['13']);
    expect(lastOf([1, 2, 3, 4, 5, 6])).toEqual(['13']);
    expect(lastOf([1, 2, 3, 4])).toEqual(['12']);
    expect(lastOf([7, 1, 2, 3, 4])).toEqual(['12']);
    expect(lastOf([6, 7, 1, 2, 3])).toEqual(['11']);
    expect(lastOf([6, 7])).toEqual(['08']);
  });

  test('is the day before when the team is off on Friday, and there is none in a week off', () => {
    expect(lastOf([1, 2, 3, 4, 5], { full: ['2026-11-13'], half: [] })).toEqual(['12']);
    expect(lastOf([1, 2, 3, 4, 5], { full: [], half: ['2026-11-13'] })).toEqual(['13']);
    expect(lastOf([1, 2, 3, 4, 5], { full: week, half: [] })).toEqual([]);
  });
});

describe('a member’s weekdays', () => {
  const shares = (member: OwnCalendar) => WEEK.map((day) => memberShareOf(TEAM, member, day));
  const onlyMonTue: Weekday[] = [1, 2];

  test('count from the day on which they changed, and before it as they were', () => {
    const changed = withWeekdays(FULL_TIME, onlyMonTue, WED);
    expect(shares(changed)).toEqual([1, 0, 0, 0, 0]);
    expect(shares(withWeekdays(changed, [3, 5], THU))).toEqual([1, 0, 0, 0, 1]);
    expect(shares(withWeekdays(changed, undefined, FRI))).toEqual([1, 0, 0, 0, 1]);
    expect(shares(withWeekdays({ ...FULL_TIME, worksOn: [2, 3] }, [5], WED))).toEqual([0, 0, 0, 0, 1]);
  });

  test('that were said and changed on one day held on none', () => {
    const once = withWeekdays(FULL_TIME, onlyMonTue, WED);
    const twice = withWeekdays(once, [4], WED);
    expect(twice.worksOnBefore).toEqual([{ until: WED, worksOn: undefined }]);
    expect(shares(twice)).toEqual([1, 0, 0, 0.5, 0]);
    expect(withWeekdays(twice, [4], FRI)).toBe(twice);
  });
});

describe('a member', () => {
  const shares = (member: Partial<OwnCalendar>) =>
    WEEK.map((day) => memberShareOf(TEAM, { ...FULL_TIME, ...member }, day));

  test.each<[string, Partial<OwnCalendar>, number[]]>([
    ['works when the team does', {}, [1, 0, 1, 0.5, 1]],
    ['works on own weekdays only', { worksOn: [1, 2, 3] }, [1, 0, 1, 0, 0]],
    ['does not work where the team does not', { worksOn: [1, 6] }, [1, 0, 0, 0, 0]],
    ['has days and half days off', { daysOff: { full: [MON], half: [WED] } }, [0, 0, 0.5, 0.5, 1]],
    [
      'takes the half day of the team’s for the own one',
      { daysOff: { full: [], half: [THU] } },
      [1, 0, 1, 0.5, 1],
    ],
    ['counts from the day of joining', { joinedOn: WED }, [0, 0, 1, 0.5, 1]],
    ['counts until the day before leaving', { leftOn: THU }, [1, 0, 1, 0, 0]],
  ])('%s', (_rule, member, expected) => {
    expect(shares(member)).toEqual(expected);
  });
});

describe('member-days', () => {
  test('are the sum of all members’ shares, without days said away', () => {
    const members = [FULL_TIME, { ...FULL_TIME, worksOn: [1, 2] }];
    expect(memberDaysOf(TEAM, members, WEEK)).toBe(3.5 + 1);
    expect(memberDaysOf(TEAM, members, WEEK, (member, day) => member === FULL_TIME && day === FRI)).toBe(3.5);
    expect(memberDaysOf(TEAM, [], WEEK)).toBe(0);
  });
});

test('what is said of a day last counts: off in whole, in half, or worked after all', () => {
  const off = withDaysOff(NO_DAYS_OFF, ['2026-11-05', '2026-11-04'], 0);
  expect(off).toEqual({ full: ['2026-11-04', '2026-11-05'], half: [] });
  const half = withDaysOff(off, ['2026-11-05', '2026-11-06'], 0.5);
  expect(half).toEqual({ full: ['2026-11-04'], half: ['2026-11-05', '2026-11-06'] });
  expect(withDaysOff(half, ['2026-11-04', '2026-11-06'], 1)).toEqual({ full: [], half: ['2026-11-05'] });
});

describe('the members of a day', () => {
  const days = { workingDays: [1, 2, 3, 4, 5] };

  test('count whole, part-time ones by their share of the week, days off or not', () => {
    const away = { ...FULL_TIME, daysOff: { full: WEEK, half: [] } };
    const halfTime = { ...FULL_TIME, worksOn: [1, 2] };
    expect(wholeMembersOn(days, [FULL_TIME, away, halfTime], WED)).toBe(2.4);
  });

  test('are those who had joined and not left yet', () => {
    const dated = [
      { ...FULL_TIME, joinedOn: WED },
      { ...FULL_TIME, joinedOn: THU },
      { ...FULL_TIME, leftOn: WED },
      { ...FULL_TIME, leftOn: THU },
    ];
    expect(wholeMembersOn(days, dated, WED)).toBe(2);
    expect(wholeMembersOn(days, [], WED)).toBe(0);
  });
});
