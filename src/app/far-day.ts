/**
 * How far ahead a day may be that somebody types. One in thousands of years is a slip of the pen, and what comes after the year
 * 9999 can't be written, compared or stored as other days are.
 */
import { type Day, dayPlus } from '../sprint/calendar.ts';

const MOST_YEARS_AHEAD = 10;
const DAYS_A_YEAR = 365;

export interface FarDay {
  readonly code: 'too-far-ahead';
  readonly years: number;
}

/** What is wrong with it; undefined: it isn't too far ahead. @example whyTooFar('9999-12-31', '2026-11-02')?.years === 10 */
export function whyTooFar(day: Day, today: Day): FarDay | undefined {
  if (day <= dayPlus(today, MOST_YEARS_AHEAD * DAYS_A_YEAR)) return undefined;
  return { code: 'too-far-ahead', years: MOST_YEARS_AHEAD };
}
