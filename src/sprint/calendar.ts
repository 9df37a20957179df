/**
 * Calendar days without a clock or a zone: ISO dates such as `2026-11-04` in, ISO dates out.
 * Instants and zones are the business of `src/app/clock/local-time.ts`. Every status and every prompt asks for all days of a
 * sprint, so days are counted in milliseconds of UTC, where each is as long as another.
 */

const DAY_MS = 86_400_000;

/** An ISO 8601 calendar date, `YYYY-MM-DD`. */
export type Day = string;

/** ISO weekday: 1 is Monday, 7 is Sunday. */
export type Weekday = number;

/** Whether the text is a date that exists. */
export function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const startMs = startOf(text);
  // Some days too many for their month are read as days of the next.
  return !Number.isNaN(startMs) && dayFrom(startMs) === text;
}

function startOf(day: Day): number {
  return Date.parse(`${day}T00:00:00Z`);
}

function dayFrom(startMs: number): Day {
  return new Date(startMs).toISOString().slice(0, 10);
}

/** The day `days` later (earlier when negative). */
export function dayPlus(day: Day, days: number): Day {
  return dayFrom(startOf(day) + days * DAY_MS);
}

/** Number of days from `from` to `to`; negative when `to` is earlier. */
export function daysBetween(from: Day, to: Day): number {
  return (startOf(to) - startOf(from)) / DAY_MS;
}

/** What was found out before: a status asks some hundred times, for each member about each day of the sprint. */
const weekdays = new Map<Day, Weekday>();
const MOST_WEEKDAYS = 5_000;

/** ISO weekday of a day. */
export function weekdayOf(day: Day): Weekday {
  const before = weekdays.get(day);
  if (before !== undefined) return before;
  const weekday = new Date(startOf(day)).getUTCDay() || 7;
  if (weekdays.size >= MOST_WEEKDAYS) weekdays.clear();
  weekdays.set(day, weekday);
  return weekday;
}

/** A sprint, a holiday and what is known ahead are shorter by far. */
const MOST_DAYS = 4_000;

/**
 * Every day from `from` to `to`, both included; none when `to` is earlier.
 *
 * @throws RangeError beyond ten years or so: a damaged row must not hold everybody up while days of the year 9999 are counted
 */
export function daysFromTo(from: Day, to: Day): Day[] {
  if (daysBetween(from, to) >= MOST_DAYS) throw new RangeError(`there are too many days until ${to}`);
  const startMs = startOf(from);
  return Array.from({ length: Math.max(0, daysBetween(from, to) + 1) }, (_, i) =>
    dayFrom(startMs + i * DAY_MS),
  );
}

/** The days from `from` to `to`, both included, that fall on one of the weekdays. */
export function workingDaysFromTo(from: Day, to: Day, workingDays: readonly Weekday[]): Day[] {
  return daysFromTo(from, to).filter((day) => workingDays.includes(weekdayOf(day)));
}
