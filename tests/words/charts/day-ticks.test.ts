import { describe, expect, test } from 'vitest';
import { dayTicks } from '../../../src/words/charts/day-ticks.ts';

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

  test('keep their dates in every time zone of the machine', () => {
    const zone = process.env.TZ;
    try {
      for (const other of ['Pacific/Apia', 'America/Los_Angeles', 'Asia/Kathmandu']) {
        process.env.TZ = other;
        expect(dayTicks(['2026-03-01'], all, { weekdays: true })).toEqual(['Sun\n1\nMar']);
      }
    } finally {
      if (zone === undefined) delete process.env.TZ;
      else process.env.TZ = zone;
    }
  });

  test('are refused when one is no date', () => {
    expect(() => dayTicks(['2026-13-01'], all)).toThrow(RangeError);
  });
});
