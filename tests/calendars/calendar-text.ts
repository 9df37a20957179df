/** Calendar files as programs write them: lines end in CRLF. */
import type { CalendarReading, CalendarWindow } from '../../src/app/ports/calendars.ts';
import { readCalendarFile } from '../../src/calendars/read-calendar-file.ts';

export function calendarText(...lines: readonly string[]): string {
  return [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Harbour//Test//EN',
    'X-WR-CALNAME:Team',
    ...lines,
    'END:VCALENDAR',
    '',
  ].join('\r\n');
}

export function eventText(uid: string, ...lines: readonly string[]): string {
  return ['BEGIN:VEVENT', `UID:${uid}`, 'DTSTAMP:20261101T080000Z', ...lines, 'END:VEVENT'].join('\r\n');
}

/** @throws when it could not be read */
export function read(text: string, window: CalendarWindow): CalendarReading {
  const reading = readCalendarFile(text, window);
  if (typeof reading === 'string') throw new Error(reading);
  return reading;
}
