/**
 * Which days off a calendar gives, and what of it gives none and why. An event on whole days takes them. One at times of a day
 * takes the day when it covers three quarters of the team's working day or more, half of it from a third on, and nothing below
 * that. Several that take half count together.
 */
import { type Day, dayPlus, daysFromTo, type Weekday, weekdayOf } from '../../sprint/calendar.ts';
import type { DaysOff } from '../../sprint/work-calendar.ts';
import type { TimeOfDay } from '../clock/local-time.ts';
import type { CalendarEvent, CalendarReading } from '../ports/calendars.ts';

const WHOLE_FROM = 3 / 4;
const HALF_FROM = 1 / 3;
const USUAL_START = '09:00';
const USUAL_END = '17:00';

export interface CalendarDayOff {
  readonly day: Day;
  readonly isHalf: boolean;
  /** Of the events that take it; may be empty. */
  readonly titles: readonly string[];
}

const LEFT_OUT_REASONS = [
  'cancelled',
  'free',
  'too-short',
  'off-already',
  'no-working-day',
  'unreadable',
] as const;
type LeftOutReason = (typeof LEFT_OUT_REASONS)[number];

export interface LeftOutEvent {
  readonly why: LeftOutReason;
  readonly title: string;
  /** None for one that could not be understood. */
  readonly days: readonly Day[];
}

export interface DaysFromCalendar {
  /** In order. */
  readonly days: readonly CalendarDayOff[];
  /** An entry for each title and reason, in the order of the reasons. */
  readonly leftOut: readonly LeftOutEvent[];
  /** How many events have no day in the time that matters. */
  readonly outside: number;
}

/** The calendar of those whose days off they are. */
interface CalendarOfThose {
  readonly promptAt: TimeOfDay;
  readonly closesAt: TimeOfDay;
  readonly workingDays: readonly Weekday[];
  /** Days and half days off that are known already. */
  readonly daysOff: DaysOff;
  readonly from: Day;
  readonly to: Day;
  /** Whether events that take no time in their owner's calendar count as well. */
  readonly takesFree: boolean;
}

/** In minutes of the day. */
interface Stretch {
  readonly from: number;
  readonly to: number;
}

interface Taken {
  readonly stretches: Stretch[];
  readonly titles: Set<string>;
}

export function daysFromCalendar(reading: CalendarReading, those: CalendarOfThose): DaysFromCalendar {
  const working = workingStretch(those);
  const taken = new Map<Day, Taken>();
  const leftOut = new Map<string, { why: LeftOutReason; title: string; days: Day[] }>();
  const leaveOut = (why: LeftOutReason, title: string, days: readonly Day[]): void => {
    const key = `${why} ${title}`;
    const known = leftOut.get(key) ?? { why, title, days: [] };
    known.days.push(...days.filter((day) => !known.days.includes(day)));
    leftOut.set(key, known);
  };
  for (const event of reading.events) {
    const parts = partsOf(event, those);
    const why = event.isCancelled ? 'cancelled' : event.isFree && !those.takesFree ? 'free' : undefined;
    if (why !== undefined)
      leaveOut(
        why,
        event.title,
        parts.map(({ day }) => day),
      );
    if (why !== undefined) continue;
    for (const { day, stretch } of parts) {
      const inside = overlap(stretch, working);
      const share = lengthOf(inside) / lengthOf(working);
      const reason = whyNot(day, event.isAllDay ? 1 : share, those);
      if (reason !== undefined) {
        leaveOut(reason, event.title, [day]);
        continue;
      }
      const { stretches, titles } = taken.get(day) ?? { stretches: [], titles: new Set() };
      stretches.push(event.isAllDay ? working : inside);
      if (event.title !== '') titles.add(event.title);
      taken.set(day, { stretches, titles });
    }
  }
  for (const title of reading.unreadable) leaveOut('unreadable', title, []);
  const order = (why: LeftOutReason): number => LEFT_OUT_REASONS.indexOf(why);
  return {
    days: [...taken]
      .map(([day, { stretches, titles }]) => ({
        day,
        isHalf: coveredMinutes(stretches) / lengthOf(working) < WHOLE_FROM,
        titles: [...titles],
      }))
      .sort((a, b) => (a.day < b.day ? -1 : 1)),
    leftOut: [...leftOut.values()].sort((a, b) => order(a.why) - order(b.why)),
    outside: reading.outside,
  };
}

/** From 09:00 to 17:00, and further where the team is asked earlier or closes its sprints later. */
function workingStretch({ promptAt, closesAt }: CalendarOfThose): Stretch {
  return {
    from: minutesOf(promptAt < USUAL_START ? promptAt : USUAL_START),
    to: minutesOf(closesAt > USUAL_END ? closesAt : USUAL_END),
  };
}

function whyNot(
  day: Day,
  share: number,
  { workingDays, daysOff }: CalendarOfThose,
): LeftOutReason | undefined {
  if (!workingDays.includes(weekdayOf(day))) return 'no-working-day';
  if (share < HALF_FROM) return 'too-short';
  if (daysOff.full.includes(day)) return 'off-already';
  return share < WHOLE_FROM && daysOff.half.includes(day) ? 'off-already' : undefined;
}

/** What an event takes of each day that matters; one that takes no time is on the day of its start. */
function partsOf(
  { starts, ends }: CalendarEvent,
  { from, to }: CalendarOfThose,
): { readonly day: Day; readonly stretch: Stretch }[] {
  const first = starts.slice(0, 10);
  const end = ends.slice(0, 10);
  const last = ends.endsWith('T00:00') && end > first ? dayPlus(end, -1) : end;
  const [start, stop] = [first < from ? from : first, last > to ? to : last];
  if (start > stop) return [];
  return daysFromTo(start, stop).map((day) => ({
    day,
    stretch: {
      from: day === first ? minutesOf(starts.slice(11)) : 0,
      to: day === end ? minutesOf(ends.slice(11)) : 24 * 60,
    },
  }));
}

function minutesOf(time: TimeOfDay): number {
  return Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
}

function lengthOf({ from, to }: Stretch): number {
  return to - from;
}

function overlap(one: Stretch, other: Stretch): Stretch {
  const from = Math.max(one.from, other.from);
  return { from, to: Math.max(from, Math.min(one.to, other.to)) };
}

/** Minutes that at least one of the stretches covers. */
function coveredMinutes(stretches: readonly Stretch[]): number {
  let covered = 0;
  let until = 0;
  for (const { from, to } of stretches.toSorted((a, b) => a.from - b.from)) {
    covered += Math.max(0, to - Math.max(from, until));
    until = Math.max(until, to);
  }
  return covered;
}
