/** What the use cases need to have read out of calendars. */
import type { Day } from '../../sprint/calendar.ts';
import type { GivenFile } from '../csv/given-file.ts';

/** The days that matter, both included, and the zone in which they are days. */
export interface CalendarWindow {
  readonly from: Day;
  readonly to: Day;
  /** IANA name; times without a zone are taken as this zone's. */
  readonly timeZone: string;
}

/** An event, or one occurrence of it. */
export interface CalendarEvent {
  /** May be empty. */
  readonly title: string;
  readonly isAllDay: boolean;
  /** It takes no time in its owner's calendar. */
  readonly isFree: boolean;
  readonly isCancelled: boolean;
  /** `YYYY-MM-DDTHH:MM` in the window's zone; a whole day begins at 00:00. */
  readonly starts: string;
  /** The first minute that isn't part of it. */
  readonly ends: string;
}

export interface CalendarReading {
  /** Those that touch the window, in order of their start. */
  readonly events: readonly CalendarEvent[];
  /** How many events have no day in the window. */
  readonly outside: number;
  /** Titles of events that could not be understood. */
  readonly unreadable: readonly string[];
}

/** `too much`: reading it took longer, or gave more, than one file may. */
export type UnreadableCalendar = 'not a calendar' | 'not text' | 'too much';

export interface PublicHolidays {
  /** What it is called, as `Germany, Bayern`. */
  readonly place: string;
  readonly reading: CalendarReading;
  /** Parts of the country that may have further holidays; none when one was named. */
  readonly regions: readonly string[];
}

export type UnknownPlace =
  | { readonly unknown: 'country' }
  | { readonly unknown: 'region'; readonly regions: readonly string[] };

export interface Calendars {
  /** @param file an iCalendar file (RFC 5545), of which nothing is trusted */
  read(file: GivenFile, window: CalendarWindow): Promise<CalendarReading | UnreadableCalendar>;
  /** @param typed a country or a part of it, such as `DE-BY` */
  holidays(typed: string, window: CalendarWindow): Promise<PublicHolidays | UnknownPlace>;
}
