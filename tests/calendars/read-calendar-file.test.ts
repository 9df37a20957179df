/** Files in the shapes that calendar programs give them. */
import { describe, expect, it } from 'vitest';
import { decodeText } from '../../src/app/csv/decode-text.ts';
import type { CalendarEvent } from '../../src/app/ports/calendars.ts';
import { readInThread } from '../../src/calendars/calendars.ts';
import { readCalendarFile } from '../../src/calendars/read-calendar-file.ts';
import { calendarText, eventText, read } from './calendar-text.ts';

const YEAR = { from: '2026-11-02', to: '2027-11-01', timeZone: 'Europe/Berlin' };

const times = (events: readonly CalendarEvent[]) => events.map(({ starts, ends }) => `${starts} ${ends}`);
const timesOf = (...lines: readonly string[]) =>
  times(read(calendarText(eventText('1', ...lines)), YEAR).events);
const titlesOf = (text: string) => read(text, YEAR).events.map(({ title }) => title);

/** As a program describes a zone by a name of its own. */
const OWN_ZONE = [
  'BEGIN:VTIMEZONE',
  'TZID:Eastern Standard Time',
  'BEGIN:STANDARD',
  'DTSTART:16010101T020000',
  'TZOFFSETFROM:-0400',
  'TZOFFSETTO:-0500',
  'RRULE:FREQ=YEARLY;BYDAY=1SU;BYMONTH=11',
  'END:STANDARD',
  'BEGIN:DAYLIGHT',
  'DTSTART:16010101T020000',
  'TZOFFSETFROM:-0500',
  'TZOFFSETTO:-0400',
  'RRULE:FREQ=YEARLY;BYDAY=2SU;BYMONTH=3',
  'END:DAYLIGHT',
  'END:VTIMEZONE',
];

describe('days', () => {
  it('last until the day that the file names as the end, which is no part of the event (RFC 5545 §3.6.1)', () => {
    expect(timesOf('DTSTART;VALUE=DATE:20261224', 'DTEND;VALUE=DATE:20261227')).toEqual([
      '2026-12-24T00:00 2026-12-27T00:00',
    ]);
  });

  it('are one without an end, and as many as a duration says', () => {
    expect(timesOf('DTSTART;VALUE=DATE:20261224')).toEqual(['2026-12-24T00:00 2026-12-25T00:00']);
    expect(timesOf('DTSTART;VALUE=DATE:20261224', 'DURATION:P1W')).toEqual([
      '2026-12-24T00:00 2026-12-31T00:00',
    ]);
  });

  it('are all-day events, and the same days in every zone', () => {
    const text = calendarText(eventText('1', 'DTSTART;VALUE=DATE:20261224'));
    const { events } = read(text, { ...YEAR, timeZone: 'Pacific/Kiritimati' });
    expect(events).toMatchObject([{ isAllDay: true, starts: '2026-12-24T00:00' }]);
  });
});

describe('times', () => {
  it('on UTC, in a named zone and in a described one are the team’s time', () => {
    expect(timesOf('DTSTART:20261201T080000Z', 'DTEND:20261201T120000Z')).toEqual([
      '2026-12-01T09:00 2026-12-01T13:00',
    ]);
    expect(timesOf('DTSTART;TZID=Europe/Lisbon:20261201T080000', 'DURATION:PT4H')).toEqual([
      '2026-12-01T09:00 2026-12-01T13:00',
    ]);
    expect(timesOf('DTSTART;TZID=/example.org/2026/Europe/Lisbon:20261201T080000', 'DURATION:PT4H')).toEqual([
      '2026-12-01T09:00 2026-12-01T13:00',
    ]);
    const described = eventText('1', 'DTSTART;TZID="Eastern Standard Time":20261201T030000', 'DURATION:PT4H');
    expect(times(read(calendarText(...OWN_ZONE, described), YEAR).events)).toEqual([
      '2026-12-01T09:00 2026-12-01T13:00',
    ]);
  });

  it('of an event that repeats stay the same by the clock of its zone when clocks change', () => {
    // New York leaves summer time two weeks after Berlin does, and enters it two weeks earlier: 14 to 28 March 2027.
    const weekly = [
      'DTSTART;TZID=Eastern Standard Time:20270308T080000',
      'DURATION:PT1H',
      'RRULE:FREQ=WEEKLY;COUNT=4',
    ];
    const { events } = read(calendarText(...OWN_ZONE, eventText('1', ...weekly)), YEAR);
    expect(events.map(({ starts }) => starts)).toEqual([
      '2027-03-08T14:00',
      '2027-03-15T13:00',
      '2027-03-22T13:00',
      '2027-03-29T14:00',
    ]);
  });

  it('without a zone, or in one that nobody knows, are taken as the team’s', () => {
    expect(timesOf('DTSTART:20261201T090000', 'DTEND:20261201T130000')).toEqual([
      '2026-12-01T09:00 2026-12-01T13:00',
    ]);
    expect(timesOf('DTSTART;TZID=Harbour Time:20261201T090000', 'DURATION:PT4H')).toEqual([
      '2026-12-01T09:00 2026-12-01T13:00',
    ]);
  });

  it('may end in another zone than they start in', () => {
    expect(
      timesOf('DTSTART;TZID=Europe/Berlin:20261201T090000', 'DTEND;TZID=Europe/Lisbon:20261201T120000'),
    ).toEqual(['2026-12-01T09:00 2026-12-01T13:00']);
  });
});

describe('an event that repeats', () => {
  const WEEKLY = ['DTSTART;TZID=Europe/Berlin:20261201T090000', 'DURATION:PT8H'];

  it('leaves out the times that the file excepts, on UTC and as days too (RFC 5545 §3.8.5.1)', () => {
    expect(
      timesOf(
        ...WEEKLY,
        'RRULE:FREQ=WEEKLY;COUNT=5',
        'EXDATE;TZID=Europe/Berlin:20261208T090000',
        'EXDATE:20261215T080000Z',
        'EXDATE;VALUE=DATE:20261222',
      ),
    ).toEqual(['2026-12-01T09:00 2026-12-01T17:00', '2026-12-29T09:00 2026-12-29T17:00']);
  });

  it('comes on further days that the file lists (RFC 5545 §3.8.5.2)', () => {
    expect(timesOf('DTSTART;VALUE=DATE:20261201', 'RDATE;VALUE=DATE:20261203,20261207')).toEqual([
      '2026-12-01T00:00 2026-12-02T00:00',
      '2026-12-03T00:00 2026-12-04T00:00',
      '2026-12-07T00:00 2026-12-08T00:00',
    ]);
  });

  it('has occurrences that were moved, and others that were cancelled (RFC 5545 §3.8.4.4)', () => {
    const text = calendarText(
      eventText('1', ...WEEKLY, 'RRULE:FREQ=WEEKLY;COUNT=3', 'SUMMARY:Course'),
      eventText(
        '1',
        'RECURRENCE-ID;TZID=Europe/Berlin:20261208T090000',
        'DTSTART;TZID=Europe/Berlin:20261210T090000',
        'DURATION:PT8H',
        'SUMMARY:Course, moved',
      ),
      eventText(
        '1',
        'RECURRENCE-ID:20261215T080000Z',
        'DTSTART;TZID=Europe/Berlin:20261215T090000',
        'DURATION:PT8H',
        'SUMMARY:Course',
        'STATUS:CANCELLED',
      ),
    );
    expect(
      read(text, YEAR).events.map(({ starts, title, isCancelled }) => [starts, title, isCancelled]),
    ).toEqual([
      ['2026-12-01T09:00', 'Course', false],
      ['2026-12-10T09:00', 'Course, moved', false],
      ['2026-12-15T09:00', 'Course', true],
    ]);
  });

  it('ends on the day of UNTIL, which is part of it', () => {
    expect(
      timesOf('DTSTART;VALUE=DATE:20261201', 'RRULE:FREQ=DAILY;UNTIL=20261203').map((time) =>
        time.slice(0, 10),
      ),
    ).toEqual(['2026-12-01', '2026-12-02', '2026-12-03']);
    expect(
      timesOf(...WEEKLY, 'RRULE:FREQ=DAILY;UNTIL=20261203T080000Z').map((time) => time.slice(0, 10)),
    ).toEqual(['2026-12-01', '2026-12-02', '2026-12-03']);
  });

  it('long ago is found in the window, an occurrence that reaches into it included', () => {
    expect(timesOf('DTSTART;VALUE=DATE:19971231', 'DTEND;VALUE=DATE:19980103', 'RRULE:FREQ=YEARLY')).toEqual([
      '2026-12-31T00:00 2027-01-03T00:00',
    ]);
    expect(timesOf('DTSTART;VALUE=DATE:20011031', 'DURATION:P4D', 'RRULE:FREQ=YEARLY')).toEqual([
      '2026-10-31T00:00 2026-11-04T00:00',
      '2027-10-31T00:00 2027-11-04T00:00',
    ]);
  });
});

describe('a file', () => {
  it('may fold its lines, begin with a byte order mark, and hold properties of the program’s own', () => {
    const text = calendarText(
      'X-WR-TIMEZONE:Europe/Berlin',
      eventText(
        '1',
        'DTSTART;VALUE=DATE:20261224',
        'SUMMARY;LANGUAGE=en:Christmas Eve\\, the qu',
        ' ay is closed',
        'X-APPLE-TRAVEL-ADVISORY-BEHAVIOR:AUTOMATIC',
        'BEGIN:VALARM',
        'ACTION:DISPLAY',
        'TRIGGER:-PT15M',
        'DESCRIPTION:Soon',
        'END:VALARM',
      ),
      'BEGIN:VTODO\r\nUID:2\r\nSUMMARY:Paint the crane\r\nEND:VTODO',
    );
    const bytes = Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from(text)]);
    expect(titlesOf(decodeText(bytes) ?? '')).toEqual(['Christmas Eve, the quay is closed']);
    expect(titlesOf(text.replaceAll('\r\n', '\n'))).toEqual(['Christmas Eve, the quay is closed']);
  });

  it('says which events are cancelled, and which take no time', () => {
    const text = calendarText(
      eventText('1', 'DTSTART;VALUE=DATE:20261201', 'STATUS:CANCELLED'),
      eventText('2', 'DTSTART;VALUE=DATE:20261202', 'TRANSP:TRANSPARENT'),
      eventText('3', 'DTSTART;VALUE=DATE:20261203', 'STATUS:CONFIRMED', 'TRANSP:OPAQUE'),
    );
    expect(read(text, YEAR).events.map(({ isCancelled, isFree }) => [isCancelled, isFree])).toEqual([
      [true, false],
      [false, true],
      [false, false],
    ]);
    const withdrawn = calendarText('METHOD:CANCEL', eventText('1', 'DTSTART;VALUE=DATE:20261201'));
    expect(read(withdrawn, YEAR).events).toMatchObject([{ isCancelled: true }]);
  });

  it('may hold several calendars, or none of events', () => {
    const one = calendarText(eventText('1', 'DTSTART;VALUE=DATE:20261201', 'SUMMARY:One'));
    const other = calendarText(eventText('1', 'DTSTART;VALUE=DATE:20261202', 'SUMMARY:Two'));
    expect(titlesOf(one + other)).toEqual(['One', 'Two']);
    expect(titlesOf(calendarText())).toEqual([]);
  });

  it('has events outside the window, which are counted, and such as can’t be understood, which are named', () => {
    const text = calendarText(
      eventText('1', 'DTSTART;VALUE=DATE:20200101', 'SUMMARY:Long ago'),
      eventText('2', 'DTSTART;VALUE=DATE:20200101', 'RRULE:FREQ=DAILY;UNTIL=20210101', 'SUMMARY:Over'),
      eventText('3', 'SUMMARY:Without a start'),
      eventText('4', 'DTSTART;VALUE=DATE:20261203', 'DTEND;VALUE=DATE:20261201', 'SUMMARY:Backwards'),
      eventText('5', 'DTSTART:20261201T090000Z', 'RRULE:FREQ=SECONDLY', 'SUMMARY:Each second'),
      eventText('6', 'DTSTART;VALUE=DATE:20261224', 'SUMMARY:Fine'),
    );
    const { events, outside, unreadable } = read(text, YEAR);
    expect([events.length, outside]).toEqual([1, 2]);
    expect(unreadable).toEqual(['Without a start', 'Backwards', 'Each second']);
  });

  it('that is no calendar is refused, and one with more events than several people have', () => {
    for (const text of [
      '',
      'name,first day',
      'BEGIN:VCARD\r\nFN:Ines\r\nEND:VCARD',
      '{}',
      'BEGIN:VCALENDAR',
    ]) {
      expect(readCalendarFile(text, YEAR)).toBe('not a calendar');
    }
    const daily = Array.from({ length: 15 }, (_, i) =>
      eventText(String(i), 'DTSTART:20260101T080000Z', 'RRULE:FREQ=DAILY'),
    );
    expect(readCalendarFile(calendarText(...daily), YEAR)).toBe('too much');
  });
});

describe('a file made to hold the bot up', () => {
  it('has rules that never match and rules with every part, which end', () => {
    const all = (count: number) => Array.from({ length: count }, (_, i) => i).join(',');
    const text = calendarText(
      ...[
        'FREQ=DAILY;BYMONTH=2;BYMONTHDAY=31',
        'FREQ=SECONDLY;BYMONTH=2;BYMONTHDAY=31',
        `FREQ=YEARLY;BYHOUR=${all(24)};BYMINUTE=${all(60)};BYSECOND=${all(60)};BYSETPOS=-1`,
      ].map((rule, i) => eventText(String(i), 'DTSTART:20200101T080000Z', `RRULE:${rule}`)),
    );
    expect(read(text, YEAR).events.length).toBeLessThan(10);
  });

  it('is read in a thread of its own, which is stopped, and meanwhile the bot goes on', async () => {
    const rules = Array.from({ length: 10_000 }, (_, i) =>
      eventText(String(i), 'DTSTART:20200101T080000Z', 'RRULE:FREQ=YEARLY;BYDAY=-1MO'),
    );
    let turns = 0;
    const turning = setInterval(() => {
      turns += 1;
    }, 1);
    expect(await readInThread({ fileName: 'a.ics', text: calendarText(...rules) }, YEAR, 100)).toBe(
      'too much',
    );
    clearInterval(turning);
    expect(turns).toBeGreaterThan(0);
  });

  it('is read in that thread as it is read here', async () => {
    const text = calendarText(eventText('1', 'DTSTART;VALUE=DATE:20261224', 'SUMMARY:Eve'));
    expect(await readInThread({ fileName: 'a.ics', text }, YEAR, 60_000)).toEqual(read(text, YEAR));
  });
});
