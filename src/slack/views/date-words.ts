/** Days that may lie months ahead or years back, as people write them. */
import type { Day } from '../../sprint/calendar.ts';

const FORMAT = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'long',
  year: 'numeric',
  timeZone: 'UTC',
});

/** `12 March 2027` */
export function longDate(day: Day): string {
  return FORMAT.format(new Date(`${day}T00:00:00Z`));
}

/** The same without its year, where another day beside it has named that year. */
export function longDateBeside(day: Day, other: Day): string {
  const date = longDate(day);
  return day.slice(0, 4) === other.slice(0, 4) ? date.slice(0, date.lastIndexOf(' ')) : date;
}
