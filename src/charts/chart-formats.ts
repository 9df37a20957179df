/**
 * Dates, amounts, counts and lists as the charts write them. Pure. A date here is a day on a team's calendar, so no
 * time zone takes part: it is read and written as UTC.
 */
const parts = new Intl.DateTimeFormat('en', {
  timeZone: 'UTC',
  weekday: 'long',
  day: 'numeric',
  month: 'long',
  year: 'numeric',
});

/** Throws a `RangeError` when `day` is no ISO date. */
function dayParts(day: string) {
  const of = Object.fromEntries(
    parts.formatToParts(new Date(`${day}T00:00:00Z`)).map(({ type, value }) => [type, value]),
  );
  return { weekday: of.weekday ?? '', date: of.day ?? '', month: of.month ?? '', year: of.year ?? '' };
}

/** `3 Nov` */
export function dateShort(day: string): string {
  const { date, month } = dayParts(day);
  return `${date} ${month.slice(0, 3)}`;
}

/** `3 Nov 2026` */
export function dateWithYear(day: string): string {
  return `${dateShort(day)} ${dayParts(day).year}`;
}

/** `Tue 3 Nov` */
export function dayShort(day: string): string {
  return `${dayParts(day).weekday.slice(0, 3)} ${dateShort(day)}`;
}

/** `Tuesday 3 November` */
export function dayLong(day: string): string {
  const { weekday, date, month } = dayParts(day);
  return `${weekday} ${date} ${month}`;
}

/** `Mon 2 to Fri 13 Nov 2026`; month and year are said once when both days share them. */
export function daySpan(firstDay: string, lastDay: string): string {
  const [first, last] = [dayParts(firstDay), dayParts(lastDay)];
  const end = `${dayShort(lastDay)} ${last.year}`;
  if (firstDay === lastDay) return end;
  if (first.year !== last.year) return `${dayShort(firstDay)} ${first.year} to ${end}`;
  if (first.month !== last.month) return `${dayShort(firstDay)} to ${end}`;
  return `${first.weekday.slice(0, 3)} ${first.date} to ${end}`;
}

/**
 * Under an axis: the day, below it the month where it differs from the label before, and with `years` the year where
 * that does; with `weekdays` the weekday above. Nothing for days that are not `shown`.
 */
export function dayTicks(
  days: readonly string[],
  shown: (index: number) => boolean,
  { weekdays = false, years = false } = {},
): string[] {
  let [lastMonth, lastYear] = ['', ''];
  return days.map((day, index) => {
    if (!shown(index)) return '';
    const { weekday, date, month, year } = dayParts(day);
    const lines = [...(weekdays ? [weekday.slice(0, 3)] : []), date];
    if (month !== lastMonth || (years && year !== lastYear)) lines.push(month.slice(0, 3));
    if (years && year !== lastYear) lines.push(year);
    [lastMonth, lastYear] = [month, year];
    return lines.join('\n');
  });
}

/** At most one decimal, no trailing zero, a minus sign. Points are halves, but an ideal line passes through thirds. */
export function pointsNumber(points: number): string {
  const rounded = Math.round(Math.abs(points) * 10) / 10;
  return points < 0 && rounded > 0 ? `-${rounded}` : `${rounded}`;
}

/** `1 point`, `3.5 points`, `0 points`. */
export function pointsText(points: number): string {
  const number = pointsNumber(points);
  return number === '1' ? '1 point' : `${number} points`;
}

/** `1 closed sprint`, `3 closed sprints`. */
export function countText(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listText(items: readonly string[]): string {
  const head = items.slice(0, -1).join(', ');
  const last = items.at(-1) ?? '';
  return head === '' ? last : `${head} and ${last}`;
}
