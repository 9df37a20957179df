import type { Weekday } from '../../sprint/calendar.ts';

/** ISO weekdays from Monday. */
export const WEEKDAYS: readonly { readonly weekday: Weekday; readonly name: string }[] = [
  { weekday: 1, name: 'Monday' },
  { weekday: 2, name: 'Tuesday' },
  { weekday: 3, name: 'Wednesday' },
  { weekday: 4, name: 'Thursday' },
  { weekday: 5, name: 'Friday' },
  { weekday: 6, name: 'Saturday' },
  { weekday: 7, name: 'Sunday' },
];

/** `Monday to Friday`, `Monday, Wednesday`, `every day` */
export function weekdayWords(workingDays: readonly Weekday[]): string {
  const chosen = WEEKDAYS.filter(({ weekday }) => workingDays.includes(weekday));
  if (chosen.length === WEEKDAYS.length) return 'every day';
  const first = chosen[0];
  const last = chosen.at(-1);
  if (first && last && chosen.length > 2 && last.weekday - first.weekday === chosen.length - 1) {
    return `${first.name} to ${last.name}`;
  }
  return chosen.map(({ name }) => name).join(', ');
}
