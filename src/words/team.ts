/** A team's settings in words. */
import type { Weekday } from '../sprint/calendar.ts';
import { say } from './say.ts';

/** ISO weekdays from Monday. */
export const WEEKDAYS = [1, 2, 3, 4, 5, 6, 7] as const satisfies readonly Weekday[];

export function weekdayName(weekday: (typeof WEEKDAYS)[number]): string {
  return say(`weekday-${weekday}`);
}

/** `Monday to Friday`, `Monday, Wednesday`, `every day` */
export function weekdayWords(workingDays: readonly Weekday[]): string {
  const chosen = WEEKDAYS.filter((weekday) => workingDays.includes(weekday));
  if (chosen.length === WEEKDAYS.length) return say('weekdays-all');
  const first = chosen[0];
  const last = chosen.at(-1);
  if (first && last && chosen.length > 2 && last - first === chosen.length - 1) {
    return say('weekdays-span', { first: weekdayName(first), last: weekdayName(last) });
  }
  return say('weekdays-some', { days: chosen.map(weekdayName) });
}
