/** Days that have come elsewhere: an export may be from a team whose day begins earlier than that of the team it comes to. */
import type { Day } from '../../sprint/calendar.ts';
import { dayAt, instantOf, type TimeOfDay } from '../clock/local-time.ts';

/** The zone in which a day begins first. */
const FIRST_ZONE = 'Etc/GMT-14';

/** The latest day that has begun anywhere. @example latestDay(new Date('2026-10-30T12:00:00Z')) === '2026-10-31' */
export function latestDay(now: Date): Day {
  return dayAt(now, FIRST_ZONE);
}

/** The time on that day in the zone; where it hasn't come, the latest moment that has, but never one of another day. */
export function timeThatCame(day: Day, time: TimeOfDay, timeZone: string, now: Date): Date {
  const begins = instantOf(day, '00:00', timeZone);
  const latest = begins > now ? begins : now;
  const at = instantOf(day, time, timeZone);
  return at < latest ? at : latest;
}
