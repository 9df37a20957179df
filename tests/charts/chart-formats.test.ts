import { describe, expect, test } from 'vitest';
import {
  countText,
  dayLong,
  dayShort,
  daySpan,
  dayTicks,
  listText,
  pointsNumber,
  pointsText,
} from '../../src/charts/chart-formats.ts';

describe('a day in a chart', () => {
  // 2026-11-03 was checked against ISO week 2026-W45, day 2.
  test('is written short, with the month, or in full', () => {
    expect(dayShort('2026-11-03')).toBe('Tue 3 Nov');
    expect(dayLong('2026-11-03')).toBe('Tuesday 3 November');
  });

  test('keeps its date in every time zone of the machine', () => {
    const zone = process.env.TZ;
    try {
      for (const other of ['Pacific/Apia', 'America/Los_Angeles', 'Asia/Kathmandu']) {
        process.env.TZ = other;
        expect(dayShort('2026-03-01')).toBe('Sun 1 Mar');
      }
    } finally {
      if (zone === undefined) delete process.env.TZ;
      else process.env.TZ = zone;
    }
  });

  test('is refused when it is no date', () => {
    expect(() => dayShort('2026-13-01')).toThrow(RangeError);
  });
});

describe('a span of days', () => {
  test.each([
    ['2026-11-02', '2026-11-13', 'Mon 2 to Fri 13 Nov 2026'],
    ['2026-11-23', '2026-12-04', 'Mon 23 Nov to Fri 4 Dec 2026'],
    ['2026-12-21', '2027-01-01', 'Mon 21 Dec 2026 to Fri 1 Jan 2027'],
    ['2026-11-02', '2026-11-02', 'Mon 2 Nov 2026'],
  ])('from %s to %s says month and year once when they are shared', (first, last, text) => {
    expect(daySpan(first, last)).toBe(text);
  });
});

describe('days under an axis', () => {
  const all = () => true;

  test('have the month below where it begins, and the weekday above where it matters', () => {
    expect(dayTicks(['2026-11-30', '2026-12-01', '2026-12-02'], all, { weekdays: true })).toEqual([
      'Mon\n30\nNov',
      'Tue\n1\nDec',
      'Wed\n2',
    ]);
  });

  test('have the year below where it begins', () => {
    expect(dayTicks(['2026-12-04', '2026-12-18', '2027-01-01', '2028-01-07'], all, { years: true })).toEqual([
      '4\nDec\n2026',
      '18',
      '1\nJan\n2027',
      '7\nJan\n2028',
    ]);
  });

  test('say the month again after days that are left out', () => {
    const days = ['2026-10-02', '2026-10-30', '2026-11-27', '2026-12-11'];
    expect(dayTicks(days, (index) => index % 2 === 1)).toEqual(['', '30\nOct', '', '11\nDec']);
    expect(dayTicks([], all)).toEqual([]);
  });
});

test.each([
  [0, '0'],
  [-0, '0'],
  [3, '3'],
  [3.5, '3.5'],
  [20 / 3, '6.7'],
  [2.96, '3'],
  [-1.5, '-1.5'],
  [-0.04, '0'],
])('%s points are written %s', (points, text) => {
  expect(pointsNumber(points)).toBe(text);
});

test('only exactly one is a point', () => {
  expect([0, 0.5, 1, 1.5].map(pointsText)).toEqual(['0 points', '0.5 points', '1 point', '1.5 points']);
});

test('lists and counts read as a person writes them', () => {
  expect([listText([]), listText(['a']), listText(['a', 'b']), listText(['a', 'b', 'c'])]).toEqual([
    '',
    'a',
    'a and b',
    'a, b and c',
  ]);
  expect([countText(0, 'card'), countText(1, 'card'), countText(2, 'card')]).toEqual([
    '0 cards',
    '1 card',
    '2 cards',
  ]);
});
