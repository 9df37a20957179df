/** Reads a day as people type it: `24 Dec`, `2026-12-24`, `24.12.`, `24/12`, `Dec 24th 2027`, `end of March`, `tomorrow`, `Friday`. */
import { getDaysInMonth } from 'date-fns/getDaysInMonth';
import { type Day, dayPlus, isDay, type Weekday, weekdayOf } from '../sprint/calendar.ts';

const MONTHS = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];
const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];
const MONTH = `(?:${firstLetters(MONTHS)})[a-z]*\\.?`;
const YEAR = '(?: \\d{4})?';
const END_OF = '(?:the )?end\\sof (?:(?:the|this) )?';

/**
 * The source of an expression that finds a day among other words, in lower case with one space between words. Whether there
 * is such a day, reading it tells.
 */
export const DAY_WORDS = [
  '\\d{4}-\\d{1,2}-\\d{1,2}',
  '\\d{1,2}\\.\\d{1,2}\\.(?:\\d{4})?',
  'today|tomorrow|yesterday',
  `(?:${firstLetters(WEEKDAYS)})(?:[a-z]*day)?`,
  `\\d{1,2}(?:st|nd|rd|th|\\.)? ${MONTH}${YEAR}`,
  `${MONTH} \\d{1,2}(?:st|nd|rd|th)?${YEAR}`,
  `${END_OF}(?:month|year|${MONTH}${YEAR})`,
].join('|');

const ONLY_A_DAY = new RegExp(`^(?:${DAY_WORDS})$`, 'i');

/** Whether it is written as a day is, and nothing else stands beside it. @example isDayWords('31 Feb') */
export function isDayWords(typed: string): boolean {
  return ONLY_A_DAY.test(typed);
}

/** `yesterday`, or another day that is marked as one: `on Monday`, `2 Nov:`. */
const LEADING_DAY = new RegExp(
  `^(?:(yesterday)[ ,:]+|(?:for|on|last) (${DAY_WORDS})[ ,:]+|(${DAY_WORDS}) ?[,:] *)`,
  'i',
);

/**
 * The day that what is said begins with, as it was typed, and the rest.
 *
 * @example withoutLeadingDay('on Monday, 41: 3') → { day: 'Monday', rest: '41: 3' }
 */
export function withoutLeadingDay(text: string): { readonly day: string | undefined; readonly rest: string } {
  const [found = '', ...days] = LEADING_DAY.exec(text) ?? [];
  const rest = text.slice(found.length);
  return rest.trim() === '' ? { day: undefined, rest: text } : { day: days.find(Boolean), rest };
}

/** `7-18 dec`, where the month stands once for two days. */
const MONTH_ONCE = new RegExp(`\\b(\\d{1,2})\\.? ?[-–—] ?(\\d{1,2}\\.?) (${MONTH}${YEAR})`, 'g');

/** @example withMonthTwice('7-18 dec') === '7 dec to 18 dec' */
export function withMonthTwice(typed: string): string {
  return typed.replace(MONTH_ONCE, '$1 $3 to $2 $3');
}

/**
 * @param from a weekday and a day without a year are the first such day from this one on
 * @returns undefined when it is no day
 * @example readDay('4 jan', '2026-11-30') === '2027-01-04'
 */
export function readDay(typed: string, today: Day, from: Day = today): Day | undefined {
  return read(typed, today, {
    weekday: (weekday) => dayPlus(from, (weekday - weekdayOf(from) + 7) % 7),
    // 29 February comes every fourth year, but for centuries.
    inSomeYear: (inYear) =>
      yearsFrom(from, 1)
        .map(inYear)
        .find((day) => isDay(day) && day >= from),
  });
}

/**
 * The same of a day that has come: a weekday and a day without a year are the latest such day.
 *
 * @example readGoneDay('friday', '2026-11-30') === '2026-11-27'
 */
export function readGoneDay(typed: string, today: Day): Day | undefined {
  return read(typed, today, {
    weekday: (weekday) => dayPlus(today, -((weekdayOf(today) - weekday + 7) % 7)),
    inSomeYear: (inYear) =>
      yearsFrom(today, -1)
        .map(inYear)
        .find((day) => isDay(day) && day <= today),
  });
}

interface Search {
  readonly weekday: (weekday: Weekday) => Day;
  readonly inSomeYear: (inYear: (year: number) => Day) => Day | undefined;
}

function read(typed: string, today: Day, search: Search): Day | undefined {
  const text = typed.toLowerCase().replace(/\s+/g, ' ').trim();
  if (isDay(text)) return text;
  if (text === 'today') return today;
  if (text === 'tomorrow') return dayPlus(today, 1);
  if (text === 'yesterday') return dayPlus(today, -1);
  const weekday = weekdayNamed(text);
  if (weekday > 0 && /^[a-z]{3}/.test(text)) return search.weekday(weekday);
  const named =
    /^(?<day>\d{1,2})(?:st|nd|rd|th|\.)? (?<month>[a-z]{3,9})\.?(?: (?<year>\d{4}))?$/.exec(text) ??
    /^(?<month>[a-z]{3,9})\.? (?<day>\d{1,2})(?:st|nd|rd|th)?(?: (?<year>\d{4}))?$/.exec(text) ??
    /^(?:the )?(?<day>end) of (?:(?:the|this) )?(?<month>[a-z]{3,9})\.?(?: (?<year>\d{4}))?$/.exec(text);
  const numbered = /^(?<day>\d{1,2})\.(?<month>\d{1,2})\.(?<year>\d{4})?$/.exec(text);
  const { day = '', month = '', year } = (named ?? numbered)?.groups ?? slashed(text);
  const monthNumber = named ? monthNamed(month, today) : Number(month);
  if (day === '' || monthNumber === 0) return undefined;
  const inYear = (of: number): Day => {
    const dayOfMonth = day === 'end' ? getDaysInMonth(new Date(of, monthNumber - 1)) : Number(day);
    return `${of}-${pad(monthNumber)}-${pad(dayOfMonth)}`;
  };
  if (year === undefined) return search.inSomeYear(inYear);
  return isDay(inYear(Number(year))) ? inYear(Number(year)) : undefined;
}

/** `15/1` and `1/15`, where one number can't be a month; `3/4` may be either of two days. */
function slashed(text: string): { readonly day?: string; readonly month?: string; readonly year?: string } {
  const [, first = '', second = '', year] = /^(\d{1,2})\/(\d{1,2})(?:\/(\d{4}))?$/.exec(text) ?? [];
  const more = year === undefined ? {} : { year };
  if (Number(first) > MONTHS.length) return { day: first, month: second, ...more };
  if (Number(second) > MONTHS.length || first === second) return { day: second, month: first, ...more };
  return {};
}

/** @param name may be `month`, for that of today, and `year`, for its last one. @returns 0 for what is none */
function monthNamed(name: string, today: Day): number {
  if (name === 'month') return Number(today.slice(5, 7));
  return name === 'year' ? 12 : MONTHS.findIndex((month) => month.startsWith(name)) + 1;
}

function firstLetters(names: readonly string[]): string {
  return names.map((name) => name.slice(0, 3)).join('|');
}

function yearsFrom(day: Day, step: 1 | -1): number[] {
  return Array.from({ length: 9 }, (_, i) => Number(day.slice(0, 4)) + i * step);
}

function pad(number: number): string {
  return String(number).padStart(2, '0');
}

/** @returns 0 for a word that names none */
export function weekdayNamed(word: string): Weekday {
  if (/^[1-7]$/.test(word)) return Number(word);
  const bare = word.replace(/s$/, '');
  if (bare.length < 2) return 0;
  return WEEKDAYS.findIndex((name) => name.startsWith(bare)) + 1;
}
