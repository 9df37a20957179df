/**
 * The public holidays of a country or a part of it, as a calendar gives them. The library brings the days of the whole world
 * along, so this is loaded in a thread only when somebody asks.
 */
import Holidays from 'date-holidays';
import { Temporal } from 'temporal-polyfill';
import type { CalendarEvent, CalendarWindow, PublicHolidays, UnknownPlace } from '../app/ports/calendars.ts';

/** @param typed `DE-BY`, `Germany, Bavaria` or `GB ENG`: codes of ISO 3166, or names in English or as the country has them */
export function publicHolidays(typed: string, window: CalendarWindow): PublicHolidays | UnknownPlace {
  const [country = '', region] = typed.split(/[-,/]/).map((part) => part.trim());
  const all = new Holidays();
  const code = codeOf(country, [all.getCountries('en')]);
  if (code === undefined) return { unknown: 'country' };
  const names = [all.getStates(code, 'en'), all.getStates(code)] as (Record<string, string> | undefined)[];
  const regions = Object.entries(names[0] ?? {}).map(([id, name]) => `${id} (${name})`);
  const part = region === undefined ? undefined : codeOf(region, names);
  if (region !== undefined && part === undefined) return { unknown: 'region', regions };
  const holidays = part === undefined ? new Holidays(code) : new Holidays(code, part);
  const years = [...new Set([window.from, window.to].map((day) => Number(day.slice(0, 4))))];
  const events = years
    .flatMap((year) => holidays.getHolidays(year, 'en'))
    .filter(({ type }) => type === 'public')
    .map(eventOf)
    .filter(({ starts }) => starts.slice(0, 10) >= window.from && starts.slice(0, 10) <= window.to);
  const name = [all.getCountries('en')[code], part && names[0]?.[part]].filter(Boolean).join(', ');
  return {
    place: name,
    reading: { events, outside: 0, unreadable: [] },
    regions: part === undefined ? regions : [],
  };
}

function codeOf(typed: string, lists: readonly (Record<string, string> | undefined)[]): string | undefined {
  const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  const wanted = plain(typed);
  for (const list of lists) {
    const found = Object.entries(list ?? {}).find(([id, name]) => [plain(id), plain(name)].includes(wanted));
    if (found) return found[0];
  }
  return undefined;
}

/** `date` is the local time of the start; some holidays begin at noon. */
function eventOf({ date, name, start, end }: ReturnType<Holidays['getHolidays']>[number]): CalendarEvent {
  const starts = Temporal.PlainDateTime.from(date.slice(0, 19));
  const milliseconds = end.getTime() - start.getTime();
  const isAllDay = date.slice(11, 19) === '00:00:00';
  const ends = isAllDay
    ? starts.add({ days: Math.max(1, Math.round(milliseconds / 86_400_000)) })
    : starts.add({ milliseconds });
  const text = (time: Temporal.PlainDateTime): string => time.toString({ smallestUnit: 'minute' });
  return { title: name, isAllDay, isFree: false, isCancelled: false, starts: text(starts), ends: text(ends) };
}
