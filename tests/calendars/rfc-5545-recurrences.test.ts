/**
 * The examples of RFC 5545 section 3.8.5.3 with the occurrences that it lists. All start at 09:00 in New York, so that the
 * change of clocks on 26 October 1997 shows as well.
 */
import { describe, expect, it } from 'vitest';
import { daysFromTo } from '../../src/sprint/calendar.ts';
import { calendarText, eventText, read } from './calendar-text.ts';

const ZONE = [
  'BEGIN:VTIMEZONE',
  'TZID:America/New_York',
  'BEGIN:DAYLIGHT',
  'DTSTART:19870405T020000',
  'RRULE:FREQ=YEARLY;BYDAY=1SU;BYMONTH=4',
  'TZOFFSETFROM:-0500',
  'TZOFFSETTO:-0400',
  'END:DAYLIGHT',
  'BEGIN:STANDARD',
  'DTSTART:19671029T020000',
  'RRULE:FREQ=YEARLY;BYDAY=-1SU;BYMONTH=10',
  'TZOFFSETFROM:-0400',
  'TZOFFSETTO:-0500',
  'END:STANDARD',
  'END:VTIMEZONE',
];

/** `9: 2-5 8` are the days of September of the year. */
function days(year: number, listed: Readonly<Record<number, string>>): string[] {
  return Object.entries(listed).flatMap(([month, list]) =>
    list.split(' ').flatMap((piece) => {
      const [from = '', to = from] = piece.split('-');
      const day = (number: string) => `${year}-${month.padStart(2, '0')}-${number.padStart(2, '0')}`;
      return daysFromTo(day(from), day(to));
    }),
  );
}

/** Days at 09:00, from the first day of the example to that of `to`. */
function occurrences(to: string, start: string, ...rules: readonly string[]): string[] {
  const lines = [
    `DTSTART;TZID=America/New_York:${start}T090000`,
    'DURATION:PT30M',
    ...rules,
    'SUMMARY:Example',
  ];
  const text = calendarText(...ZONE, eventText('1', ...lines));
  const { events, unreadable } = read(text, { from: '1996-01-01', to, timeZone: 'America/New_York' });
  expect(unreadable).toEqual([]);
  for (const { starts, ends } of events)
    expect([starts.slice(10), ends.slice(10)]).toEqual(['T09:00', 'T09:30']);
  return events.map(({ starts }) => starts.slice(0, 10));
}

const EXAMPLES: readonly [
  what: string,
  to: string,
  start: string,
  rules: readonly string[],
  days: string[],
][] = [
  [
    'daily for 10 occurrences',
    '1998-12-31',
    '19970902',
    ['RRULE:FREQ=DAILY;COUNT=10'],
    days(1997, { 9: '2-11' }),
  ],
  [
    'daily until December 24, 1997',
    '1998-12-31',
    '19970902',
    ['RRULE:FREQ=DAILY;UNTIL=19971224T000000Z'],
    days(1997, { 9: '2-30', 10: '1-31', 11: '1-30', 12: '1-23' }),
  ],
  [
    'every other day, forever',
    '1997-12-03',
    '19970902',
    ['RRULE:FREQ=DAILY;INTERVAL=2'],
    days(1997, {
      9: '2 4 6 8 10 12 14 16 18 20 22 24 26 28 30',
      10: '2 4 6 8 10 12 14 16 18 20 22 24 26 28 30',
      11: '1 3 5 7 9 11 13 15 17 19 21 23 25 27 29',
      12: '1 3',
    }),
  ],
  [
    'every 10 days, 5 occurrences',
    '1998-12-31',
    '19970902',
    ['RRULE:FREQ=DAILY;INTERVAL=10;COUNT=5'],
    days(1997, { 9: '2 12 22', 10: '2 12' }),
  ],
  [
    'every day in January, for 3 years',
    '2000-12-31',
    '19980101',
    ['RRULE:FREQ=YEARLY;UNTIL=20000131T140000Z;BYMONTH=1;BYDAY=SU,MO,TU,WE,TH,FR,SA'],
    [1998, 1999, 2000].flatMap((year) => days(year, { 1: '1-31' })),
  ],
  [
    'the same, said by the day',
    '2000-12-31',
    '19980101',
    ['RRULE:FREQ=DAILY;UNTIL=20000131T140000Z;BYMONTH=1'],
    [1998, 1999, 2000].flatMap((year) => days(year, { 1: '1-31' })),
  ],
  [
    'weekly for 10 occurrences',
    '1998-12-31',
    '19970902',
    ['RRULE:FREQ=WEEKLY;COUNT=10'],
    days(1997, { 9: '2 9 16 23 30', 10: '7 14 21 28', 11: '4' }),
  ],
  [
    'every other week, forever',
    '1998-02-17',
    '19970902',
    ['RRULE:FREQ=WEEKLY;INTERVAL=2;WKST=SU'],
    [
      ...days(1997, { 9: '2 16 30', 10: '14 28', 11: '11 25', 12: '9 23' }),
      ...days(1998, { 1: '6 20', 2: '3 17' }),
    ],
  ],
  [
    'weekly on Tuesday and Thursday for 5 weeks',
    '1998-12-31',
    '19970902',
    ['RRULE:FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH'],
    days(1997, { 9: '2 4 9 11 16 18 23 25 30', 10: '2' }),
  ],
  [
    'every other week on Monday, Wednesday and Friday until December 24',
    '1998-12-31',
    '19970901',
    ['RRULE:FREQ=WEEKLY;INTERVAL=2;UNTIL=19971224T000000Z;WKST=SU;BYDAY=MO,WE,FR'],
    days(1997, {
      9: '1 3 5 15 17 19 29',
      10: '1 3 13 15 17 27 29 31',
      11: '10 12 14 24 26 28',
      12: '8 10 12 22',
    }),
  ],
  [
    'monthly on the first Friday for 10 occurrences',
    '1999-12-31',
    '19970905',
    ['RRULE:FREQ=MONTHLY;COUNT=10;BYDAY=1FR'],
    [
      ...days(1997, { 9: '5', 10: '3', 11: '7', 12: '5' }),
      ...days(1998, { 1: '2', 2: '6', 3: '6', 4: '3', 5: '1', 6: '5' }),
    ],
  ],
  [
    'every other month on the first and last Sunday for 10 occurrences',
    '1999-12-31',
    '19970907',
    ['RRULE:FREQ=MONTHLY;INTERVAL=2;COUNT=10;BYDAY=1SU,-1SU'],
    [...days(1997, { 9: '7 28', 11: '2 30' }), ...days(1998, { 1: '4 25', 3: '1 29', 5: '3 31' })],
  ],
  [
    'monthly on the second-to-last Monday for 6 months',
    '1999-12-31',
    '19970922',
    ['RRULE:FREQ=MONTHLY;COUNT=6;BYDAY=-2MO'],
    [...days(1997, { 9: '22', 10: '20', 11: '17', 12: '22' }), ...days(1998, { 1: '19', 2: '16' })],
  ],
  [
    'monthly on the third-to-the-last day',
    '1998-02-28',
    '19970928',
    ['RRULE:FREQ=MONTHLY;BYMONTHDAY=-3'],
    [...days(1997, { 9: '28', 10: '29', 11: '28', 12: '29' }), ...days(1998, { 1: '29', 2: '26' })],
  ],
  [
    'monthly on the first and last day for 10 occurrences',
    '1999-12-31',
    '19970930',
    ['RRULE:FREQ=MONTHLY;COUNT=10;BYMONTHDAY=1,-1'],
    [...days(1997, { 9: '30', 10: '1 31', 11: '1 30', 12: '1 31' }), ...days(1998, { 1: '1 31', 2: '1' })],
  ],
  [
    'yearly in June and July for 10 occurrences',
    '2002-12-31',
    '19970610',
    ['RRULE:FREQ=YEARLY;COUNT=10;BYMONTH=6,7'],
    [1997, 1998, 1999, 2000, 2001].flatMap((year) => days(year, { 6: '10', 7: '10' })),
  ],
  [
    'every 20th Monday of the year',
    '1999-12-31',
    '19970519',
    ['RRULE:FREQ=YEARLY;BYDAY=20MO'],
    ['1997-05-19', '1998-05-18', '1999-05-17'],
  ],
  [
    'Monday of week number 20',
    '1999-12-31',
    '19970512',
    ['RRULE:FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO'],
    ['1997-05-12', '1998-05-11', '1999-05-17'],
  ],
  [
    'every Thursday in March',
    '1999-12-31',
    '19970313',
    ['RRULE:FREQ=YEARLY;BYMONTH=3;BYDAY=TH'],
    [
      ...days(1997, { 3: '13 20 27' }),
      ...days(1998, { 3: '5 12 19 26' }),
      ...days(1999, { 3: '4 11 18 25' }),
    ],
  ],
  [
    'every Friday the 13th, the first day left out',
    '2000-12-31',
    '19970902',
    ['EXDATE;TZID=America/New_York:19970902T090000', 'RRULE:FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13'],
    ['1998-02-13', '1998-03-13', '1998-11-13', '1999-08-13', '2000-10-13'],
  ],
  [
    'the first Saturday that follows the first Sunday of the month',
    '1998-06-13',
    '19970913',
    ['RRULE:FREQ=MONTHLY;BYDAY=SA;BYMONTHDAY=7,8,9,10,11,12,13'],
    [
      ...days(1997, { 9: '13', 10: '11', 11: '8', 12: '13' }),
      ...days(1998, { 1: '10', 2: '7', 3: '7', 4: '11', 5: '9', 6: '13' }),
    ],
  ],
  [
    'every 4 years, the first Tuesday after a Monday in November',
    '2004-12-31',
    '19961105',
    ['RRULE:FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;BYMONTHDAY=2,3,4,5,6,7,8'],
    ['1996-11-05', '2000-11-07', '2004-11-02'],
  ],
  [
    'the third of Tuesday, Wednesday and Thursday, for 3 months',
    '1998-12-31',
    '19970904',
    ['RRULE:FREQ=MONTHLY;COUNT=3;BYDAY=TU,WE,TH;BYSETPOS=3'],
    ['1997-09-04', '1997-10-07', '1997-11-06'],
  ],
  [
    'the second-to-last weekday of the month',
    '1998-03-31',
    '19970929',
    ['RRULE:FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2'],
    [...days(1997, { 9: '29', 10: '30', 11: '27', 12: '30' }), ...days(1998, { 1: '29', 2: '26', 3: '30' })],
  ],
  [
    'a week that starts on Monday',
    '1998-12-31',
    '19970805',
    ['RRULE:FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO'],
    days(1997, { 8: '5 10 19 24' }),
  ],
  [
    'a week that starts on Sunday',
    '1998-12-31',
    '19970805',
    ['RRULE:FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU'],
    days(1997, { 8: '5 17 19 31' }),
  ],
  [
    'a date that is no date is ignored (30 February)',
    '2007-12-31',
    '20070115',
    ['RRULE:FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5'],
    ['2007-01-15', '2007-01-30', '2007-02-15', '2007-03-15', '2007-03-30'],
  ],
];

describe('the examples of RFC 5545 section 3.8.5.3', () => {
  it.each(EXAMPLES)('%s', (_, to, start, rules, expected) => {
    expect(occurrences(to, start, ...rules)).toEqual(expected);
  });
});
