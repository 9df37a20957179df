/** Reads days off as people type them: `24 Dec`, `2026-12-24 to 2027-01-02`, `24-31 Dec`, `tomorrow half`, `team 1 May`. */
import { type Day, dayPlus, daysBetween, isDay, type Weekday, weekdayOf } from '../../sprint/calendar.ts';

export interface DaySpan {
  readonly from: Day;
  readonly to: Day;
}

export interface ReadDaysOff {
  readonly whose: 'own' | 'team';
  readonly spans: readonly DaySpan[];
  readonly isHalf: boolean;
}

export type DaysOffProblem =
  | { readonly code: 'off-no-day' }
  | { readonly code: 'off-not-a-day'; readonly typed: string }
  | { readonly code: 'off-reversed'; readonly first: Day; readonly last: Day }
  | { readonly code: 'off-too-long'; readonly most: number }
  | { readonly code: 'off-no-country'; readonly typed: string }
  | { readonly code: 'off-no-region'; readonly typed: string; readonly regions: readonly string[] }
  | { readonly code: 'off-gone-by'; readonly last: Day };

/** Longest span, in days. */
export const MOST_DAYS_OFF = 366;

const HALF = /\b(?:half(?:[ -]days?)?|mornings?|afternoons?)\b/g;
const TEAM = /^(?:the )?(?:whole )?team\b/;
const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];
/** Between the first and the last day; a hyphen between digits is part of an ISO date. */
const SPAN = / (?:to|until|till|through|thru|-) | ?(?:–|—|\.\.) ?|(?<=[a-z])-/;

/** @param today to which `tomorrow`, `Friday` and a day without a year refer: the next such day */
export function readDaysOff(
  typed: string,
  today: Day,
): { readonly read: ReadDaysOff } | { readonly problem: DaysOffProblem } {
  const lower = typed.toLowerCase().replace(/\s+/g, ' ').trim();
  const isHalf = lower.search(HALF) >= 0;
  const whose = TEAM.test(lower) ? 'team' : 'own';
  const days = lower.replace(TEAM, '').replace(HALF, ' ').replace(/\s+/g, ' ').trim();
  const pieces = days
    .split(/[,;]| and /)
    .map((piece) => piece.replace(/^ ?(?:from|on|off|a) /, ' ').trim())
    .filter((piece) => piece !== '');
  if (pieces.length === 0) return { problem: { code: 'off-no-day' } };
  const spans: DaySpan[] = [];
  for (const piece of pieces) {
    const span = spanOf(piece, today);
    if ('code' in span) return { problem: span };
    spans.push(span);
  }
  return { read: { whose, spans, isHalf } };
}

function spanOf(piece: string, today: Day): DaySpan | DaysOffProblem {
  // `24-31 Dec`, `24 - 31 Dec`: the month stands once.
  const ofOneMonth = /^(\d{1,2}) ?[-–—] ?(\d{1,2}\.? [a-zäöü]+\.?(?: \d{4})?)$/.exec(piece);
  const ends = ofOneMonth
    ? [`${ofOneMonth[1]} ${(ofOneMonth[2] as string).replace(/^\d+\.? /, '')}`, ofOneMonth[2] as string]
    : piece.split(SPAN);
  const [first = '', last, ...more] = ends.map((end) => end.trim());
  if (more.length > 0) return { code: 'off-not-a-day', typed: piece };
  const from = dayFrom(first, today);
  if (from === undefined) return { code: 'off-not-a-day', typed: first };
  if (last === undefined) return { from, to: from };
  const to = dayFrom(last, from);
  if (to === undefined) return { code: 'off-not-a-day', typed: last };
  return { from, to };
}

/** What is wrong with a span, wherever it comes from; undefined: nothing. */
export function whyNotSpan({ from, to }: DaySpan): DaysOffProblem | undefined {
  if (to < from) return { code: 'off-reversed', first: from, last: to };
  if (daysBetween(from, to) >= MOST_DAYS_OFF) return { code: 'off-too-long', most: MOST_DAYS_OFF };
  return undefined;
}

function dayFrom(text: string, onOrAfter: Day): Day | undefined {
  if (isDay(text)) return text;
  if (text === 'today') return onOrAfter;
  if (text === 'tomorrow') return dayPlus(onOrAfter, 1);
  const weekday = weekdayNamed(text);
  if (weekday > 0 && /^[a-z]{3}/.test(text)) return nextWeekday(onOrAfter, weekday);
  const named =
    /^(?<day>\d{1,2})(?:st|nd|rd|th|\.)? (?<month>[a-z]{3,9})\.?(?: (?<year>\d{4}))?$/.exec(text) ??
    /^(?<month>[a-z]{3,9})\.? (?<day>\d{1,2})(?:st|nd|rd|th)?(?: (?<year>\d{4}))?$/.exec(text);
  const { day = '', month = '', year } = named?.groups ?? {};
  const monthNumber = MONTHS.findIndex((name) => month.startsWith(name)) + 1;
  if (monthNumber === 0) return undefined;
  const inYear = (of: number): Day => `${of}-${pad(monthNumber)}-${pad(Number(day))}`;
  if (year !== undefined) return existing(inYear(Number(year)));
  // 29 February comes every fourth year, but for centuries.
  const first = Number(onOrAfter.slice(0, 4));
  return Array.from({ length: 9 }, (_, i) => inYear(first + i)).find(
    (candidate) => isDay(candidate) && candidate >= onOrAfter,
  );
}

function existing(day: Day): Day | undefined {
  return isDay(day) ? day : undefined;
}

function pad(number: number): string {
  return String(number).padStart(2, '0');
}

function nextWeekday(onOrAfter: Day, weekday: Weekday): Day {
  return dayPlus(onOrAfter, (weekday - weekdayOf(onOrAfter) + 7) % 7);
}

/**
 * Reads the weekdays on which somebody works: `mon-thu`, `Mon, Tue and Thu`, `1 2 3`, `all` for the team's.
 *
 * @returns ISO weekdays in order; `team`; undefined when a word is neither
 */
export function readWeekdays(typed: string): readonly Weekday[] | 'team' | undefined {
  const lower = typed.toLowerCase().replace(/\s+/g, ' ').trim();
  if (/^(?:all|every day|full[ -]time|as the team)$/.test(lower)) return 'team';
  const pieces = lower
    .replace(/ ?(?:-|–|—| to | until | through ) ?/g, '-')
    .split(/[ ,;+&/]+|\band\b/)
    .filter((piece) => piece !== '');
  const chosen = new Set<Weekday>();
  for (const piece of pieces) {
    const [first = 0, last = first, ...more] = piece.split('-').map(weekdayNamed);
    if (first === 0 || last === 0 || more.length > 0) return undefined;
    // `fri-mon` goes over the weekend.
    for (let weekday = first; ; weekday = (weekday % 7) + 1) {
      chosen.add(weekday);
      if (weekday === last) break;
    }
  }
  return chosen.size === 0 ? undefined : [...chosen].sort((a, b) => a - b);
}

/** @returns 0 for a word that names none */
function weekdayNamed(word: string): Weekday {
  if (/^[1-7]$/.test(word)) return Number(word);
  const bare = word.replace(/s$/, '');
  if (bare.length < 2) return 0;
  return WEEKDAYS.findIndex((name) => name.startsWith(bare)) + 1;
}
