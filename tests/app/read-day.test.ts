import { describe, expect, test } from 'vitest';
import {
  DAY_WORDS,
  readDay,
  readGoneDay,
  withMonthTwice,
  withoutLeadingDay,
} from '../../src/app/read-day.ts';

/** A Monday. */
const TODAY = '2026-11-30';

describe('a day as people type it', () => {
  test.each([
    ['2026-12-24', '2026-12-24'],
    ['today', '2026-11-30'],
    ['Tomorrow', '2026-12-01'],
    ['yesterday', '2026-11-29'],
    ['mon', '2026-11-30'],
    ['Thursday', '2026-12-03'],
    ['4 Jan', '2027-01-04'],
    ['Jan  4th', '2027-01-04'],
    ['4. January 2028', '2028-01-04'],
    ['4.1.', '2027-01-04'],
    ['04.01.2028', '2028-01-04'],
    ['15/1', '2027-01-15'],
    ['1/15', '2027-01-15'],
    ['24/12/2027', '2027-12-24'],
    ['3/3', '2027-03-03'],
    ['29 Feb', '2028-02-29'],
    ['end of March', '2027-03-31'],
    ['the end of feb. 2028', '2028-02-29'],
    ['end of the month', '2026-11-30'],
    ['end of this year', '2026-12-31'],
  ])('“%s” is the next such day', (typed, day) => expect(readDay(typed, TODAY)).toBe(day));

  test.each([
    ['2026-12-24', '2026-12-24'],
    ['today', '2026-11-30'],
    ['yesterday', '2026-11-29'],
    ['mon', '2026-11-30'],
    ['Friday', '2026-11-27'],
    ['27 Nov', '2026-11-27'],
    ['1 Dec', '2025-12-01'],
    ['29 Feb', '2024-02-29'],
    ['end of October', '2026-10-31'],
  ])('“%s” of the days that have come is the latest', (typed, day) =>
    expect(readGoneDay(typed, TODAY)).toBe(day),
  );

  test.each([
    '',
    'soon',
    '31 Feb',
    '31 Feb 2027',
    '2026-02-30',
    '3/4',
    '24/13',
    '0/15',
    '31/2',
    '12/24/27',
    '24.12',
    '31.2.',
    '1.13.',
    '0.1.',
    '7',
    'december',
    'end of days',
    '5 marching',
  ])('“%s” is none', (typed) => {
    expect(readDay(typed, TODAY)).toBeUndefined();
    expect(readGoneDay(typed, TODAY)).toBeUndefined();
  });

  test('counts from another day when asked to', () => {
    expect(readDay('20 Nov', TODAY, '2026-11-01')).toBe('2026-11-20');
    expect(readDay('Friday', TODAY, '2026-12-07')).toBe('2026-12-11');
    expect(readDay('tomorrow', TODAY, '2026-12-07')).toBe('2026-12-01');
  });

  test('is found among other words', () => {
    const days = new RegExp(`\\b(?:${DAY_WORDS})(?= |$)`, 'g');
    expect('from 30 nov to dec 11th, 6 away by friday or 2026-12-24'.match(days)).toEqual([
      '30 nov',
      'friday',
      '2026-12-24',
    ]);
  });
});

test('a month that stands once counts for both days', () => {
  expect(withMonthTwice('7-18 dec')).toBe('7 dec to 18 dec');
  expect(withMonthTwice('7. – 18. december 2027, 6 away')).toBe(
    '7 december 2027 to 18. december 2027, 6 away',
  );
  expect(withMonthTwice('2026-12-07')).toBe('2026-12-07');
});

describe('a day at the beginning', () => {
  test.each([
    ['yesterday 41: 3', 'yesterday', '41: 3'],
    ['Yesterday: 3', 'Yesterday', '3'],
    ['on Monday 41: 3', 'Monday', '41: 3'],
    ['for 2 Nov, done', '2 Nov', 'done'],
    ['Fri: same', 'Fri', 'same'],
    ['2026-11-27: 3', '2026-11-27', '3'],
  ])('is taken off “%s”', (text, day, rest) => expect(withoutLeadingDay(text)).toEqual({ day, rest }));

  test.each(['yesterday', 'Monday report: 3', 'same as yesterday', '41: 3', 'Mona: 3', 'on it'])(
    'is none in “%s”',
    (text) => expect(withoutLeadingDay(text)).toEqual({ day: undefined, rest: text }),
  );
});
