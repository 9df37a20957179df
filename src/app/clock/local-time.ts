/**
 * From a team's local days and times to instants and back. A local time that a clock change skips or
 * repeats follows RFC 5545 §3.3.5: a skipped time uses the offset before the gap, a repeated time means
 * its first occurrence. That is what Temporal calls "compatible".
 */
import { Temporal } from 'temporal-polyfill';
import type { Day } from '../../sprint/calendar.ts';

/** A local time of day, `HH:MM`, 24 hours. */
export type TimeOfDay = string;

const TIME_OF_DAY = /^([01]\d|2[0-3]):[0-5]\d$/;

/** Whether the text is a time of day, `HH:MM` with 24 hours. */
export function isTimeOfDay(text: string): boolean {
  return TIME_OF_DAY.test(text);
}

/** Hours, minutes if any, and which half of the day if it is said. */
const TYPED_TIME = /^(?:at )?(\d{1,2})(?:[:.h](\d{2}))? ?(?:h|(am|pm))?$/;

/** A time of day as people type it: `8:30`, `08.30`, `8h30`, `at 8`, `8 am`, `5.30 pm`; undefined: it is none. */
export function timeTyped(typed: string): TimeOfDay | undefined {
  const [, hours = '', minutes = '00', half] =
    TYPED_TIME.exec(
      typed
        .trim()
        .toLowerCase()
        .replaceAll(/([ap])\.m\.$/g, '$1m'),
    ) ?? [];
  if (hours === '' || (half !== undefined && !isOnClockFace(Number(hours)))) return undefined;
  const hour = half === undefined ? Number(hours) : (Number(hours) % 12) + (half === 'pm' ? 12 : 0);
  const time = `${String(hour).padStart(2, '0')}:${minutes}`;
  return isTimeOfDay(time) ? time : undefined;
}

function isOnClockFace(hours: number): boolean {
  return hours >= 1 && hours <= 12;
}

/**
 * Whether this is an IANA time zone that Node.js knows: `UTC` or a region and place. Old short names and
 * bare offsets are left out, since they hide how the clocks change.
 */
export function isTimeZone(name: string): boolean {
  if (name !== 'UTC' && !name.includes('/')) return false;
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

export function instantOf(day: Day, time: TimeOfDay, timeZone: string): Date {
  const local = Temporal.PlainDateTime.from(`${day}T${time}`);
  return new Date(local.toZonedDateTime(timeZone, { disambiguation: 'compatible' }).epochMilliseconds);
}

const MINUTE_MS = 60_000;
/** By minute and zone, of which each is off by whole minutes since 1972: every request asks several times. */
const days = new Map<string, Day>();
const times = new Map<string, TimeOfDay>();
const minuteIn = (instant: Date, timeZone: string): string =>
  `${Math.floor(instant.getTime() / MINUTE_MS)} ${timeZone}`;

export function dayAt(instant: Date, timeZone: string): Day {
  const key = minuteIn(instant, timeZone);
  return days.get(key) ?? keep(days, key, zoned(instant, timeZone).toPlainDate().toString());
}

/** The time of day in the zone at an instant, `HH:MM`. */
export function timeAt(instant: Date, timeZone: string): TimeOfDay {
  const key = minuteIn(instant, timeZone);
  const time = times.get(key);
  return (
    time ?? keep(times, key, zoned(instant, timeZone).toPlainTime().toString({ smallestUnit: 'minute' }))
  );
}

/** What was found out before, since every status and every prompt asks for all days of a sprint. */
const known = new Map<string, boolean>();
const MOST_KEPT = 5_000;

function keep<Value>(all: Map<string, Value>, key: string, value: Value): Value {
  if (all.size >= MOST_KEPT) all.clear();
  all.set(key, value);
  return value;
}

/** Whether the day exists in the zone: a zone that crosses the date line may skip one. */
export function dayExists(day: Day, timeZone: string): boolean {
  const key = `${day} ${timeZone}`;
  return known.get(key) ?? keep(known, key, dayAt(instantOf(day, '12:00', timeZone), timeZone) === day);
}

function zoned(instant: Date, timeZone: string): Temporal.ZonedDateTime {
  return Temporal.Instant.fromEpochMilliseconds(instant.getTime()).toZonedDateTimeISO(timeZone);
}
