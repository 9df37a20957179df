import { describe, expect, it } from 'vitest';
import {
  fileSize,
  fillDateTokens,
  longDate,
  momentOfTs,
  shortDate,
  timeOfDay,
} from '../../../src/rehearsal/page/format-date.ts';

// 2026-11-02T09:15:00Z is 04:15 in New York (UTC−5 in winter) and 20:15 in Sydney (UTC+11 in summer).
const MOMENT = new Date('2026-11-02T09:15:00Z');
const EPOCH_SECONDS = MOMENT.getTime() / 1000;

describe('moments in words', () => {
  it('are shown in the team’s zone, not in that of the machine', () => {
    expect(timeOfDay(MOMENT, 'America/New_York')).toBe('04:15');
    expect(timeOfDay(MOMENT, 'Australia/Sydney')).toBe('20:15');
  });

  it('change the day where the zone does', () => {
    expect(shortDate(new Date('2026-11-02T23:30:00Z'), 'Asia/Kolkata')).toBe('Tue 3 Nov');
  });

  it('name weekday, day, month and year in full', () => {
    expect(longDate(MOMENT, 'Europe/Lisbon')).toBe('Monday, 2 November 2026');
  });

  it('come from message timestamps in seconds', () => {
    expect(momentOfTs(`${EPOCH_SECONDS}.000200`).toISOString()).toBe('2026-11-02T09:15:00.000Z');
  });
});

describe('date tokens', () => {
  it.each([
    ['{date_num}', '2026-11-02'],
    ['{date_short_pretty}', 'Mon 2 Nov'],
    ['on {date_long} at {time}', 'on Monday, 2 November 2026 at 09:15'],
    ['{time_secs}', '09:15:00'],
    ['{ago} and {unknown}', '{ago} and {unknown}'],
  ])('“%s” becomes “%s”', (format, words) => {
    expect(fillDateTokens(EPOCH_SECONDS, format, 'Europe/Lisbon')).toBe(words);
  });
});

it.each([
  [0, '0 bytes'],
  [1, '1 byte'],
  [999, '999 bytes'],
  [1_000, '1 kB'],
  [1_449, '1.4 kB'],
  [9_949, '9.9 kB'],
  [9_950, '10 kB'],
  [999_499, '999 kB'],
  [999_500, '1 MB'],
  [10_000_000, '10 MB'],
])('%i bytes are shown as %s', (bytes, words) => {
  expect(fileSize(bytes)).toBe(words);
});
