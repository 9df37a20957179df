/** Days off to come, day after day in one span, as lists show them. */
import { type Day, dayPlus } from '../../sprint/calendar.ts';
import type { DaysOff } from '../../sprint/work-calendar.ts';
import type { DaySpan } from './read-days-off.ts';

export interface SpanOff extends DaySpan {
  readonly isHalf: boolean;
}

/** @param from the first day that matters, and `to` the last; undefined: all that follow */
export function spansOff({ full, half }: DaysOff, from: Day, to?: Day): SpanOff[] {
  const isMeant = (day: Day): boolean => day >= from && (to === undefined || day <= to);
  const spans = [
    ...joined(full.filter(isMeant)).map((span) => ({ ...span, isHalf: false })),
    ...joined(half.filter(isMeant)).map((span) => ({ ...span, isHalf: true })),
  ];
  return spans.sort((a, b) => (a.from < b.from ? -1 : 1));
}

/** Days in order, those that follow each other in one span. */
export function joined(days: readonly Day[]): DaySpan[] {
  const spans: DaySpan[] = [];
  for (const day of days) {
    const last = spans.at(-1);
    if (last && dayPlus(last.to, 1) === day) spans[spans.length - 1] = { from: last.from, to: day };
    else spans.push({ from: day, to: day });
  }
  return spans;
}
