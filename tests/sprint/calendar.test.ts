import { afterEach, describe, expect, test } from 'vitest';
import {
  dayPlus,
  daysBetween,
  daysFromTo,
  isDay,
  weekdayOf,
  workingDaysFromTo,
} from '../../src/sprint/calendar.ts';
import { say } from '../../src/words/say.ts';

const zoneBefore = process.env.TZ;

afterEach(() => {
  if (zoneBefore === undefined) delete process.env.TZ;
  else process.env.TZ = zoneBefore;
});

// Zones whose clocks change at odd places (IANA tz 2025c): half an hour, at midnight, and far from UTC.
describe.each([
  // zone, minutes behind UTC at noon of 2026-07-01
  ['UTC', 0],
  ['America/New_York', 240],
  ['Africa/Cairo', -180],
  ['Australia/Lord_Howe', -630],
  ['Pacific/Apia', -780],
  ['Pacific/Kiritimati', -840],
  ['Asia/Kathmandu', -345],
])('on a machine whose zone is %s', (zone, minutesBehindUtc) => {
  function inZone<T>(compute: () => T): T {
    process.env.TZ = zone;
    return compute();
  }

  test('the zone is really in force', () => {
    expect(inZone(() => new Date('2026-07-01T12:00:00Z').getTimezoneOffset())).toBe(minutesBehindUtc);
  });

  test('every day is followed by the next, through all clock changes of the years around', () => {
    // Counted here by hand, so that nothing of what is tested is used to check it.
    const lengths = (year: number): number[] => [
      31,
      year % 4 === 0 ? 29 : 28,
      31,
      30,
      31,
      30,
      31,
      31,
      30,
      31,
      30,
      31,
    ];
    const expected: string[] = [];
    for (const year of [2011, 2026, 2028]) {
      for (const [month, length] of lengths(year).entries()) {
        for (let day = 1; day <= length; day += 1) {
          expected.push(`${year}-${String(month + 1).padStart(2, '0')}-${String(day).padStart(2, '0')}`);
        }
      }
    }
    const days = inZone(() =>
      [2011, 2026, 2028].flatMap((year) => daysFromTo(`${year}-01-01`, `${year}-12-31`)),
    );
    expect(days).toEqual(expected);
  });

  test('days between are whole days across a clock change', () => {
    const spans = inZone(() => [
      daysBetween('2026-03-07', '2026-03-09'),
      daysBetween('2026-04-23', '2026-04-25'),
      daysBetween('2026-11-02', '2026-10-31'),
      daysBetween('2026-11-02', '2026-11-02'),
    ]);
    expect(spans).toEqual([2, 2, -2, 0]);
  });

  test('weekdays follow ISO 8601', () => {
    // 2025-12-29 is 2026-W01-1; 2027-01-03 is the last day of 2026-W53, a Sunday (ISO 8601).
    expect(inZone(() => ['2025-12-29', '2027-01-03', '2026-11-04'].map(weekdayOf))).toEqual([1, 7, 3]);
  });

  test('a day is read by people', () => {
    expect(inZone(() => say('sprint-span', { days: 'single', from: '2026-11-04', to: '2026-11-04' }))).toBe(
      'Wed 4 Nov',
    );
  });
});

describe('a day is a date that exists', () => {
  test.each(['2026-11-04', '2024-02-29', '2000-02-29', '2026-12-31'])('%s exists', (text) => {
    expect(isDay(text)).toBe(true);
  });

  test.each([
    '2026-02-30',
    '2026-02-29',
    '1900-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-11-00',
    '2026-11-31',
    '2026-1-1',
    '4.11.2026',
    '2026-11-04T00:00',
    '',
  ])('%j does not', (text) => {
    expect(isDay(text)).toBe(false);
  });
});

test('a day can be moved both ways over the ends of months and years', () => {
  expect(dayPlus('2026-12-31', 1)).toBe('2027-01-01');
  expect(dayPlus('2024-03-01', -1)).toBe('2024-02-29');
  expect(dayPlus('2026-11-04', 0)).toBe('2026-11-04');
});

test('a span that ends before it begins has no days', () => {
  expect(daysFromTo('2026-11-04', '2026-11-03')).toEqual([]);
  expect(() => daysFromTo('2026-11-04', '9999-12-31')).toThrow(RangeError);
});

test('working days are those on the weekdays of the team, both ends included', () => {
  expect(workingDaysFromTo('2026-11-05', '2026-11-10', [1, 2, 3, 4, 5])).toEqual([
    '2026-11-05',
    '2026-11-06',
    '2026-11-09',
    '2026-11-10',
  ]);
  expect(workingDaysFromTo('2026-11-06', '2026-11-08', [7])).toEqual(['2026-11-08']);
  expect(workingDaysFromTo('2026-11-02', '2026-11-08', [])).toEqual([]);
});
