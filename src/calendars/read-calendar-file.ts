/**
 * Reads an iCalendar file (RFC 5545): every event and each occurrence of those that repeat, as far as they touch a window
 * of days. The file may hold anything, so this runs where it can be stopped.
 */
import ICAL from 'ical.js';
import type {
  CalendarEvent,
  CalendarReading,
  CalendarWindow,
  UnreadableCalendar,
} from '../app/ports/calendars.ts';
import { visibleText } from '../app/visible-text.ts';
import { recurrences } from './recurrences.ts';
import {
  secondsBetween,
  UTC,
  type WallTime,
  wallIn,
  wallPlus,
  wallTimeOf,
  type Zone,
  zoneOf,
} from './wall-clock.ts';

/** As many as several people's calendars have in a year. */
const MOST_EVENTS = 5_000;
const MOST_TITLE_CHARACTERS = 100;

export function readCalendarFile(text: string, window: CalendarWindow): CalendarReading | UnreadableCalendar {
  const calendars = calendarsIn(text);
  if (calendars === undefined) return 'not a calendar';
  const events: CalendarEvent[] = [];
  const unreadable: string[] = [];
  let outside = 0;
  for (const calendar of calendars) {
    const isWithdrawn = calendar.getFirstPropertyValue('method') === 'CANCEL';
    for (const found of eventsOf(calendar)) {
      const said = saidOf(found.component);
      try {
        const occurrences = occurrencesOf(found, window);
        if (occurrences.length === 0) outside += 1;
        for (const occurrence of occurrences) {
          events.push({ ...said, isCancelled: isWithdrawn || said.isCancelled, ...occurrence });
        }
      } catch {
        unreadable.push(said.title);
      }
      if (events.length > MOST_EVENTS) return 'too much';
    }
  }
  return { events: events.sort((a, b) => (a.starts < b.starts ? -1 : 1)), outside, unreadable };
}

/** A file may hold several. Undefined: it holds none. */
function calendarsIn(text: string): ICAL.Component[] | undefined {
  try {
    const parsed = ICAL.parse(text.trim());
    const all = (typeof parsed[0] === 'string' ? [parsed] : parsed) as ConstructorParameters<
      typeof ICAL.Component
    >[0][];
    const calendars = all.map((one) => new ICAL.Component(one)).filter(({ name }) => name === 'vcalendar');
    return calendars.length === 0 ? undefined : calendars;
  } catch {
    return undefined;
  }
}

interface FoundEvent {
  readonly component: ICAL.Component;
  /** Occurrences of it that the file gives by themselves, since they are different. */
  readonly changed: readonly ICAL.Property[];
}

/** A changed occurrence is an event of its own here; its event leaves it out. */
function eventsOf(calendar: ICAL.Component): FoundEvent[] {
  const components = calendar.getAllSubcomponents('vevent');
  const changed = Map.groupBy(
    components.flatMap((component) => {
      const recurrenceId = component.getFirstProperty('recurrence-id');
      return recurrenceId ? [{ uid: uidOf(component), recurrenceId }] : [];
    }),
    ({ uid }) => uid,
  );
  return components.map((component) => ({
    component,
    changed: component.hasProperty('recurrence-id')
      ? []
      : (changed.get(uidOf(component)) ?? []).map(({ recurrenceId }) => recurrenceId),
  }));
}

function uidOf(component: ICAL.Component): string {
  return String(component.getFirstPropertyValue('uid'));
}

function saidOf(component: ICAL.Component): Omit<CalendarEvent, 'starts' | 'ends'> {
  const said = (name: string): string => String(component.getFirstPropertyValue(name) ?? '');
  const title = visibleText(said('summary')).replace(/\s+/g, ' ').trim();
  return {
    title: title.slice(0, MOST_TITLE_CHARACTERS).toWellFormed(),
    isAllDay: component.getFirstProperty('dtstart')?.type === 'date',
    isFree: said('transp').toUpperCase() === 'TRANSPARENT',
    isCancelled: said('status').toUpperCase() === 'CANCELLED',
  };
}

type Occurrence = Pick<CalendarEvent, 'starts' | 'ends'>;

/** @throws RangeError when the event can't be understood */
function occurrencesOf({ component, changed }: FoundEvent, window: CalendarWindow): Occurrence[] {
  const start = component.getFirstProperty('dtstart');
  if (start === null) throw new RangeError('an event without a start');
  const zone = zoneOf(start);
  const first = wallTimeOf(timeOf(start));
  const length = lengthOf(component, start, first, zone);
  // Two days more on either side, since zones differ.
  const within = {
    from: wallPlus(`${window.from}T00:00:00`, { days: -2, seconds: -length }),
    to: `${window.to}T23:59:59`,
  };
  const starts = component.hasProperty('recurrence-id')
    ? [first]
    : recurrences({
        first,
        rules: component.getAllProperties('rrule').map((rule) => ruleText(rule, zone)),
        more: wallTimes(component.getAllProperties('rdate'), zone),
        without: wallTimes([...component.getAllProperties('exdate'), ...changed], zone),
        ...within,
        to: wallPlus(within.to, { days: 2 }),
      });
  return starts
    .map((wall) => ({
      starts: minuteOf(wallIn(wall, zone, teamZone(window))),
      ends: minuteOf(wallIn(wallPlus(wall, { seconds: length }), zone, teamZone(window))),
    }))
    .filter(
      ({ starts, ends }) =>
        starts <= `${window.to}T23:59` && (ends > `${window.from}T00:00` || starts >= `${window.from}T00:00`),
    );
}

function teamZone({ timeZone }: CalendarWindow): Zone {
  return { name: timeZone };
}

function minuteOf(wall: WallTime): string {
  return wall.slice(0, 16);
}

/** In seconds; an event on a day, and without an end, takes the day (RFC 5545 §3.6.1). */
function lengthOf(component: ICAL.Component, start: ICAL.Property, first: WallTime, zone: Zone): number {
  const end = component.getFirstProperty('dtend');
  const duration: unknown = component.getFirstPropertyValue('duration');
  const length = end
    ? secondsBetween(first, wallIn(wallTimeOf(timeOf(end)), zoneOf(end), zone))
    : duration instanceof ICAL.Duration
      ? duration.toSeconds()
      : timeOf(start).isDate
        ? 86_400
        : 0;
  if (length < 0) throw new RangeError('an event that ends before it starts');
  return length;
}

function timeOf(property: ICAL.Property): ICAL.Time {
  const time: unknown = property.getFirstValue();
  if (time instanceof ICAL.Time) return time;
  throw new RangeError('no time');
}

/** The times of the properties in the event's zone; one without a zone is in it, and a day stands for any time of it. */
function wallTimes(properties: readonly ICAL.Property[], zone: Zone): WallTime[] {
  return properties.flatMap((property) =>
    property.getValues().map((value: unknown) => {
      const time = value instanceof ICAL.Period ? value.start : value;
      if (!(time instanceof ICAL.Time)) throw new RangeError('no time');
      return time.isDate ? time.toString() : wallIn(wallTimeOf(time), zoneOf(property), zone);
    }),
  );
}

/** The rule, its last moment in the event's zone. */
function ruleText(property: ICAL.Property, zone: Zone): string {
  const rule: unknown = property.getFirstValue();
  if (!(rule instanceof ICAL.Recur)) throw new RangeError('no rule');
  const parts = rule
    .toString()
    .split(';')
    .filter((part) => !part.startsWith('UNTIL='));
  if (!rule.until) return parts.join(';');
  const isUtc = rule.until.zone === ICAL.Timezone.utcTimezone;
  const until = rule.until.isDate
    ? `${rule.until.toString()}T23:59:59`
    : wallIn(wallTimeOf(rule.until), isUtc ? UTC : undefined, zone);
  return [...parts, `UNTIL=${until.replace(/[-:]/g, '')}Z`].join(';');
}
