/** The days under an axis. */
import type { Day } from '../../sprint/calendar.ts';
import { spokenLanguage } from '../say.ts';

/**
 * The day, below it the month where it differs from the label before, and with `years` the year where that does; with
 * `weekdays` the weekday above. Nothing for days that are not `shown`.
 */
export function dayTicks(
  days: readonly Day[],
  shown: (index: number) => boolean,
  { weekdays = false, years = false } = {},
): string[] {
  const partsOf = new Intl.DateTimeFormat(spokenLanguage().tag, {
    timeZone: 'UTC',
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
  });
  let [lastMonth, lastYear] = ['', ''];
  return days.map((day, index) => {
    if (!shown(index)) return '';
    const parts = partsOf.formatToParts(new Date(`${day}T00:00:00Z`));
    const part = (type: string): string => parts.find((one) => one.type === type)?.value ?? '';
    const [month, year] = [part('month'), part('year')];
    const isNewYear = years && year !== lastYear;
    const lines = [
      ...(weekdays ? [part('weekday')] : []),
      part('day'),
      ...(month !== lastMonth || isNewYear ? [month] : []),
      ...(isNewYear ? [year] : []),
    ];
    [lastMonth, lastYear] = [month, year];
    return lines.join('\n');
  });
}
