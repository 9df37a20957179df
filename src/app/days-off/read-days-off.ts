/** Reads days off as people type them: `24 Dec`, `2026-12-24 to 2027-01-02`, `24-31 Dec`, `tomorrow half`, `team 1 May`, `not Friday`. */
import { type Day, dayPlus, daysBetween, type Weekday, weekdayOf } from '../../sprint/calendar.ts';
import type { DayShare } from '../../sprint/work-calendar.ts';
import { readDay, weekdayNamed, withMonthTwice } from '../read-day.ts';

export interface DaySpan {
  readonly from: Day;
  readonly to: Day;
}

interface ReadDaysOff {
  readonly whose: 'own' | 'team';
  readonly spans: readonly DaySpan[];
  /** How much of these days is worked; 1: they are taken back. */
  readonly share: DayShare;
}

export type DaysOffProblem =
  | { readonly code: 'off-no-day' }
  | { readonly code: 'off-every-week' }
  | { readonly code: 'off-one-end'; readonly typed: string }
  | { readonly code: 'off-somebody-else' }
  | { readonly code: 'off-not-a-day'; readonly typed: string }
  | { readonly code: 'off-reversed'; readonly first: Day; readonly last: Day }
  | { readonly code: 'off-too-long'; readonly most: number }
  | { readonly code: 'off-no-country'; readonly typed: string }
  | { readonly code: 'off-no-region'; readonly typed: string; readonly regions: readonly string[] }
  | { readonly code: 'off-gone-by'; readonly last: Day };

/** Longest span, in days. */
const MOST_DAYS_OFF = 366;

const HALF = /\b(?:half(?:[ -]days?)?|mornings?|afternoons?)\b/g;
/** `this afternoon` is today's. */
const THIS_HALF = /\bthis (?=morning|afternoon)/g;
/** A weekday that is off each week, which is no day. */
const EVERY_WEEK = /^(?:every|each) |^(?:mon|tues|wednes|thurs|fri|satur|sun)days$/;
/** With one end alone nobody knows how long, or whether the day itself is off. */
const ONE_END = /^(?:until|till|through|thru) |^for \S+ (?:days?|weeks?|months?)$/;
const WEEK = /^(this|next) week$/;
const TEAM = /^(?:the )?(?:whole )?team\b/;
/** Before days that are worked after all. */
const BACK = /^(?:not|no longer|cancel|undo|remove|take back)(?: off)? /;
/** Between the first and the last day; a hyphen between digits is part of an ISO date. */
const SPAN = / (?:to|until|till|through|thru|-) | ?(?:–|—|\.\.) ?|(?<=[a-z.])-/;

/** Whose days off are meant. */
export function whoseDaysOff(typed: string): ReadDaysOff['whose'] {
  return TEAM.test(plainly(typed).replace(BACK, '')) ? 'team' : 'own';
}

/**
 * @param today to which `tomorrow` and `Friday` refer: the next such day
 * @param earliest of the days that may still be said; a day without a year is the first such day from it on
 */
export function readDaysOff(
  typed: string,
  today: Day,
  earliest: Day,
): { readonly read: ReadDaysOff } | { readonly problem: DaysOffProblem } {
  const lower = plainly(typed).replace(THIS_HALF, 'today ');
  // Before or behind whose they are: `not team 1 May`, `team not 1 May`.
  const named = lower.replace(BACK, '').replace(TEAM, '').trim();
  const isBack = BACK.test(lower) || BACK.test(named);
  const share = isBack ? 1 : lower.search(HALF) >= 0 ? 0.5 : 0;
  const whose = whoseDaysOff(typed);
  const days = named.replace(BACK, '').replace(HALF, ' ').replace(/\s+/g, ' ').trim();
  const pieces = days
    .split(/[,;]| and /)
    .map((piece) => piece.replace(/^ ?(?:on|off|a) /, ' ').trim())
    .filter((piece) => piece !== '');
  if (pieces.length === 0) return { problem: { code: 'off-no-day' } };
  const spans: DaySpan[] = [];
  for (const piece of pieces) {
    const span = spanOf(piece, today, earliest);
    if ('code' in span) return { problem: span };
    spans.push(span);
  }
  return { read: { whose, spans, share } };
}

function plainly(typed: string): string {
  return typed.toLowerCase().replace(/\s+/g, ' ').trim();
}

function spanOf(piece: string, today: Day, earliest: Day): DaySpan | DaysOffProblem {
  if (EVERY_WEEK.test(piece)) return { code: 'off-every-week' };
  if (piece.startsWith('@')) return { code: 'off-somebody-else' };
  if (ONE_END.test(piece)) return { code: 'off-one-end', typed: piece };
  const [, week] = WEEK.exec(piece) ?? [];
  if (week !== undefined) {
    const sunday = dayPlus(today, 7 - weekdayOf(today));
    return week === 'this'
      ? { from: today, to: sunday }
      : { from: dayPlus(sunday, 1), to: dayPlus(sunday, 7) };
  }
  const [first = '', last, ...more] = withMonthTwice(piece.replace(/^from /, ''))
    .split(SPAN)
    .map((end) => end.trim());
  if (more.length > 0) return { code: 'off-not-a-day', typed: piece };
  const from = readDay(first, today, weekdayNamed(first) > 0 ? today : earliest);
  if (from === undefined) return { code: 'off-not-a-day', typed: first };
  if (last === undefined)
    return piece.startsWith('from ') ? { code: 'off-one-end', typed: piece } : { from, to: from };
  const to = readDay(last, today, from);
  if (to === undefined) return { code: 'off-not-a-day', typed: last };
  return { from, to };
}

/** What is wrong with a span, wherever it comes from; undefined: nothing. */
export function whyNotSpan({ from, to }: DaySpan): DaysOffProblem | undefined {
  if (to < from) return { code: 'off-reversed', first: from, last: to };
  if (daysBetween(from, to) >= MOST_DAYS_OFF) return { code: 'off-too-long', most: MOST_DAYS_OFF };
  return undefined;
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
