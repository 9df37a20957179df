import { describe, expect, test } from 'vitest';
import { dayLong, dayShort, daySpan, dayTick } from '../../src/charts/day-text.ts';

describe('a day in a chart', () => {
  // 2026-11-03 was checked against ISO week 2026-W45, day 2.
  test('is written short, with the month, or in full', () => {
    expect(dayTick('2026-11-03')).toBe('Tue 3');
    expect(dayShort('2026-11-03')).toBe('Tue 3 Nov');
    expect(dayLong('2026-11-03')).toBe('Tuesday 3 November');
  });

  test('keeps its date whatever the time zone of the machine', () => {
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
    expect(() => dayTick('2026-13-01')).toThrow(RangeError);
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
