/**
 * The times of a calendar file as a clock on the wall shows them, in the zone that the file names. Rules repeat by that
 * clock. A zone's IANA name counts before the file's description of it, which may end too early; programs that use names
 * of their own describe them. A time in a zone that is neither is taken as it is written, as one without a zone.
 */
import ICAL from 'ical.js';
import { Temporal } from 'temporal-polyfill';
import { isTimeZone } from '../app/clock/local-time.ts';

/** `YYYY-MM-DDTHH:MM:SS` */
export type WallTime = string;

/** Years are written with four digits, so that times compare as text. */
const FIRST: WallTime = '0000-01-01T00:00:00';

/** Undefined: the reader's own zone, whichever it is. */
export type Zone = { readonly name: string } | { readonly described: ICAL.Timezone } | undefined;

export const UTC: Zone = { name: 'UTC' };

export function zoneOf(property: ICAL.Property): Zone {
  const id = property.getParameter('tzid');
  const time: unknown = property.getFirstValue();
  if (!(time instanceof ICAL.Time) || time.isDate) return undefined;
  if (time.zone === ICAL.Timezone.utcTimezone) return UTC;
  if (typeof id !== 'string') return undefined;
  // Some programs write it behind a prefix: `/example.org/Europe/Berlin`.
  const parts = id.split('/').slice(-3);
  const name = parts.map((_, i) => parts.slice(i).join('/')).find(isTimeZone);
  if (name !== undefined) return { name };
  return time.zone === ICAL.Timezone.localTimezone ? undefined : { described: time.zone };
}

/** As written. */
export function wallTimeOf(time: ICAL.Time): WallTime {
  return time.isDate ? `${time.toString()}T00:00:00` : time.toString().slice(0, 19);
}

export function wallPlus(
  wall: WallTime,
  duration: { readonly days?: number; readonly seconds?: number },
): WallTime {
  const sum = Temporal.PlainDateTime.from(wall).add(duration);
  return sum.year < 0 ? FIRST : sum.toString({ smallestUnit: 'second' });
}

export function secondsBetween(from: WallTime, to: WallTime): number {
  return Temporal.PlainDateTime.from(from).until(to).total('seconds');
}

/** What the clock in one zone shows when that in another shows this. */
export function wallIn(wall: WallTime, from: Zone, to: Zone): WallTime {
  if (from === undefined || to === undefined || from === to) return wall;
  return wallAt(instantOf(wall, from), to);
}

function instantOf(wall: WallTime, zone: NonNullable<Zone>): Temporal.Instant {
  if ('name' in zone) return Temporal.PlainDateTime.from(wall).toZonedDateTime(zone.name).toInstant();
  const time = ICAL.Time.fromDateTimeString(wall);
  time.zone = zone.described;
  return Temporal.Instant.fromEpochMilliseconds(time.toUnixTime() * 1_000);
}

function wallAt(instant: Temporal.Instant, zone: NonNullable<Zone>): WallTime {
  if ('name' in zone) {
    return instant.toZonedDateTimeISO(zone.name).toPlainDateTime().toString({ smallestUnit: 'second' });
  }
  const time = ICAL.Time.fromJSDate(new Date(instant.epochMilliseconds), true);
  return wallTimeOf(time.convertToZone(zone.described));
}
