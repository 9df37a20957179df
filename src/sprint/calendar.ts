/**
 * Calendar days without a clock or a zone: ISO dates such as `2026-11-04` in, ISO dates out.
 * Instants and zones are the business of `src/app/clock/local-time.ts`. Functions of date-fns are imported one by one:
 * its index loads several hundred files, which every start would pay for.
 */
import { UTCDate } from '@date-fns/utc';
import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays';
import { getISODay } from 'date-fns/getISODay';
import { isValid } from 'date-fns/isValid';

/** An ISO 8601 calendar date, `YYYY-MM-DD`. */
export type Day = string;

/** ISO weekday: 1 is Monday, 7 is Sunday. */
export type Weekday = number;

/** Whether the text is a date that exists. */
export function isDay(text: string): boolean {
  return (
    /^\d{4}-\d{2}-\d{2}$/.test(text) && isValid(new UTCDate(`${text}T00:00:00Z`)) && dayPlus(text, 0) === text
  );
}

/** The day `days` later (earlier when negative). Called for each day of each member's sprint, so it formats nothing by a pattern. */
export function dayPlus(day: Day, days: number): Day {
  const date = new Date(`${day}T00:00:00Z`);
  date.setUTCDate(date.getUTCDate() + days);
  return date.toISOString().slice(0, 10);
}

/** Number of days from `from` to `to`; negative when `to` is earlier. */
export function daysBetween(from: Day, to: Day): number {
  return differenceInCalendarDays(new UTCDate(`${to}T00:00:00Z`), new UTCDate(`${from}T00:00:00Z`));
}

/** ISO weekday of a day. */
export function weekdayOf(day: Day): Weekday {
  return getISODay(new UTCDate(`${day}T00:00:00Z`));
}

/** Every day from `from` to `to`, both included; none when `to` is earlier. */
export function daysFromTo(from: Day, to: Day): Day[] {
  return Array.from({ length: Math.max(0, daysBetween(from, to) + 1) }, (_, i) => dayPlus(from, i));
}

/** The days from `from` to `to`, both included, that fall on one of the weekdays. */
export function workingDaysFromTo(from: Day, to: Day, workingDays: readonly Weekday[]): Day[] {
  return daysFromTo(from, to).filter((day) => workingDays.includes(weekdayOf(day)));
}
