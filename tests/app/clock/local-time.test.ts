import { afterEach, describe, expect, test } from 'vitest';
import {
  dayAt,
  dayExists,
  instantOf,
  isTimeOfDay,
  isTimeZone,
  timeAt,
  timeTyped,
} from '../../../src/app/clock/local-time.ts';

const zoneBefore = process.env.TZ;

afterEach(() => {
  if (zoneBefore === undefined) delete process.env.TZ;
  else process.env.TZ = zoneBefore;
});

function utc(day: string, time: string, timeZone: string): string {
  return instantOf(day, time, timeZone).toISOString().replace(':00.000Z', 'Z');
}

// The machine's own zone must not matter; these change their clocks at odd places (IANA tz 2025c).
describe.each(['UTC', 'America/New_York', 'Africa/Cairo', 'Australia/Lord_Howe', 'Pacific/Apia'])(
  'on a machine whose zone is %s',
  (machineZone) => {
    function onMachine<T>(compute: () => T): T {
      process.env.TZ = machineZone;
      return compute();
    }

    test.each([
      // RFC 5545, 3.3.5: the offset before the gap.
      ['2007-03-11', '02:30', 'America/New_York', '2007-03-11T07:30Z'],
      // The others follow from the changes of IANA tz 2025c.
      ['2026-03-08', '02:00', 'America/New_York', '2026-03-08T07:00Z'],
      ['2026-03-08', '02:30', 'America/New_York', '2026-03-08T07:30Z'],
      ['2026-03-29', '02:30', 'Europe/Berlin', '2026-03-29T01:30Z'],
      ['2026-10-04', '02:15', 'Australia/Lord_Howe', '2026-10-03T15:45Z'],
      ['2026-04-24', '00:30', 'Africa/Cairo', '2026-04-23T22:30Z'],
      ['2011-12-30', '09:15', 'Pacific/Apia', '2011-12-30T19:15Z'],
    ])('a skipped time uses the offset before the gap: %s %s %s', (day, time, zone, expected) => {
      expect(onMachine(() => utc(day, time, zone))).toBe(expected);
    });

    test.each([
      // RFC 5545, 3.3.5: the first of the two.
      ['2007-11-04', '01:30', 'America/New_York', '2007-11-04T05:30Z'],
      // The others follow from the changes of IANA tz 2025c.
      ['2026-11-01', '01:30', 'America/New_York', '2026-11-01T05:30Z'],
      ['2026-10-25', '02:30', 'Europe/Berlin', '2026-10-25T00:30Z'],
      ['2026-04-05', '01:45', 'Australia/Lord_Howe', '2026-04-04T14:45Z'],
    ])('a repeated time is its first occurrence: %s %s %s', (day, time, zone, expected) => {
      expect(onMachine(() => utc(day, time, zone))).toBe(expected);
    });

    test.each([
      ['2026-11-02', '09:15', 'Europe/Lisbon', '2026-11-02T09:15Z'],
      ['2026-07-02', '09:15', 'Europe/Lisbon', '2026-07-02T08:15Z'],
      ['2026-11-02', '09:15', 'Asia/Kolkata', '2026-11-02T03:45Z'],
      ['2026-11-02', '09:15', 'Asia/Kathmandu', '2026-11-02T03:30Z'],
      ['2026-11-02', '09:15', 'Pacific/Kiritimati', '2026-11-01T19:15Z'],
    ])('any other time has one instant, and leads back to itself: %s %s %s', (day, time, zone, expected) => {
      const [there, dayBack, timeBack] = onMachine(() => {
        const instant = instantOf(day, time, zone);
        return [utc(day, time, zone), dayAt(instant, zone), timeAt(instant, zone)];
      });
      expect([there, dayBack, timeBack]).toEqual([expected, day, time]);
    });

    test('an instant lies on different days in different zones', () => {
      const instant = new Date('2026-11-02T23:59:59.999Z');
      const days = ['Pacific/Kiritimati', 'UTC', 'Pacific/Pago_Pago'].map((zone) =>
        onMachine(() => [dayAt(instant, zone), timeAt(instant, zone)]),
      );
      expect(days).toEqual([
        ['2026-11-03', '13:59'],
        ['2026-11-02', '23:59'],
        ['2026-11-02', '12:59'],
      ]);
    });

    test('a day that a zone skipped at the date line does not exist', () => {
      // IANA tz 2025c: Apia had no 2011-12-30.
      const exist = ['2011-12-29', '2011-12-30', '2011-12-31'].map((day) =>
        onMachine(() => dayExists(day, 'Pacific/Apia')),
      );
      expect(exist).toEqual([true, false, true]);
    });
  },
);

describe('a time of day as people type it', () => {
  test.each([
    ['8:30', '08:30'],
    ['08.30', '08:30'],
    ['8h30', '08:30'],
    ['8', '08:00'],
    ['at 8', '08:00'],
    ['17 h', '17:00'],
    ['8 am', '08:00'],
    ['8.30 a.m.', '08:30'],
    ['5:15PM', '17:15'],
    ['12 am', '00:00'],
    ['12.30 pm', '12:30'],
  ])('%s is %s', (typed, time) => expect(timeTyped(typed)).toBe(time));
  test.each(['', '24', '8:60', '13 pm', '0 am', '8:3', 'half past eight', '8 30', '123'])(
    '“%s” is none',
    (typed) => expect(timeTyped(typed)).toBeUndefined(),
  );
});

describe('a time of day is HH:MM with 24 hours', () => {
  test.each(['00:00', '09:15', '23:59'])('%s', (text) => expect(isTimeOfDay(text)).toBe(true));
  test.each(['', '9:15', '24:00', '12:60', '09:15:00', '09:15 ', '9am', '０９:１５'])('not %j', (text) =>
    expect(isTimeOfDay(text)).toBe(false),
  );
});

describe('a time zone is UTC or an IANA region and place', () => {
  test.each(['UTC', 'Europe/Lisbon', 'America/Argentina/Ushuaia', 'Asia/Kathmandu', 'Etc/UTC'])(
    '%s',
    (name) => expect(isTimeZone(name)).toBe(true),
  );
  test.each(['', 'Lisbon', 'CET', '+01:00', 'GMT+1', 'Europe/Atlantis', '../etc', 'Europe/Lisbon '])(
    'not %j',
    (name) => expect(isTimeZone(name)).toBe(false),
  );
});
