/** When an event repeats (RFC 5545 §3.8.5), by the clock on its wall; that clock is handed to the library as one on UTC. */
import { RRuleTemporal } from 'rrule-temporal';
import { Temporal } from 'temporal-polyfill';
import type { WallTime } from './wall-clock.ts';

interface Repeating {
  /** DTSTART, an occurrence in any case. */
  readonly first: WallTime;
  readonly rules: readonly string[];
  /** RDATE; a day is at the time of the first. */
  readonly more: readonly string[];
  /** EXDATE and the occurrences that are told apart; a day stands for any time of it. */
  readonly without: readonly string[];
  readonly from: WallTime;
  readonly to: WallTime;
}

/** In order, from `from` to `to`. @throws when a rule is none, or repeats too often */
export function recurrences({ first, rules, more, without, from, to }: Repeating): WallTime[] {
  const left = new Set(without);
  const all = new Set([
    first,
    ...more.map((time) => (time.length === 10 ? `${time}${first.slice(10)}` : time)),
    ...rules.flatMap((rule) => repeated(first, rule, from, to)),
  ]);
  return [...all]
    .filter((wall) => wall >= from && wall <= to && !left.has(wall) && !left.has(wall.slice(0, 10)))
    .sort();
}

function repeated(first: WallTime, rule: string, from: WallTime, to: WallTime): WallTime[] {
  const until = /UNTIL=(\w+)Z/.exec(rule)?.[1];
  if (first > to || (until !== undefined && until < compact(from))) return [];
  const start = `DTSTART:${compact(first)}Z`;
  const repeating = new RRuleTemporal({ rruleString: `${start}\nRRULE:${rule}`, temporal: Temporal });
  return repeating
    .between(new Date(`${from}Z`), new Date(`${to}Z`), true)
    .map((at) => at.toPlainDateTime().toString({ smallestUnit: 'second' }));
}

function compact(wall: WallTime): string {
  return wall.replace(/[-:]/g, '');
}
