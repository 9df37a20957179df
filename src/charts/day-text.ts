/**
 * ISO dates as people read them in a chart. A date here is a day on a team's calendar, so no time zone
 * takes part: it is read and written as UTC.
 */
const weekdayNames = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;
const monthNames = [
  ...['January', 'February', 'March', 'April', 'May', 'June', 'July'],
  ...['August', 'September', 'October', 'November', 'December'],
] as const;

interface DayParts {
  readonly weekday: string;
  /** 0 is Sunday. */
  readonly weekdayNumber: number;
  readonly dayOfMonth: number;
  readonly month: string;
  readonly year: number;
}

/** Throws a `RangeError` when `day` is no ISO date. */
export function dayParts(day: string): DayParts {
  const date = new Date(`${day}T00:00:00Z`);
  const weekday = weekdayNames[date.getUTCDay()];
  const month = monthNames[date.getUTCMonth()];
  if (weekday === undefined || month === undefined) throw new RangeError(`Not an ISO date: "${day}"`);
  return {
    weekday,
    weekdayNumber: date.getUTCDay(),
    dayOfMonth: date.getUTCDate(),
    month,
    year: date.getUTCFullYear(),
  };
}

/** `Tue 3` */
export function dayTick(day: string): string {
  const { weekday, dayOfMonth } = dayParts(day);
  return `${weekday.slice(0, 3)} ${dayOfMonth}`;
}

/** `Tue 3 Nov` */
export function dayShort(day: string): string {
  return `${dayTick(day)} ${monthShort(day)}`;
}

/** `3 Nov` */
export function dateShort(day: string): string {
  return `${dayParts(day).dayOfMonth} ${monthShort(day)}`;
}

/** `3 Nov 2026` */
export function dateWithYear(day: string): string {
  return `${dateShort(day)} ${dayParts(day).year}`;
}

/** `Tuesday 3 November` */
export function dayLong(day: string): string {
  const { weekday, dayOfMonth, month } = dayParts(day);
  return `${weekday} ${dayOfMonth} ${month}`;
}

/** `Nov` */
export function monthShort(day: string): string {
  return dayParts(day).month.slice(0, 3);
}

/** `Mon 2 to Fri 13 Nov 2026`; month and year are said once when both days share them. */
export function daySpan(firstDay: string, lastDay: string): string {
  const first = dayParts(firstDay);
  const last = dayParts(lastDay);
  const end = `${dayShort(lastDay)} ${last.year}`;
  if (firstDay === lastDay) return end;
  if (first.year !== last.year) return `${dayShort(firstDay)} ${first.year} to ${end}`;
  if (first.month !== last.month) return `${dayShort(firstDay)} to ${end}`;
  return `${dayTick(firstDay)} to ${end}`;
}
