/** The burndown: what was left on each day of the sprint, and what the day added to the load. */
import { blockedCardDays } from './blocks.ts';
import { type Day, daysFromTo } from './calendar.ts';
import type { CardState } from './ledger.ts';
import {
  memberDaysOf,
  type OwnCalendar,
  teamShareOf,
  type WorkCalendar,
  workingDaysOf,
} from './work-calendar.ts';

/**
 * One day of a burndown: what was left in the evening, and what the day added to the load.
 * All amounts are points.
 */
export interface BurndownDay {
  /** ISO date, e.g. `2026-11-04`. */
  readonly day: Day;
  /** Where a steady pace from the commitment to nothing would be this evening: as many points for each member-day. */
  readonly idealPoints: number;
  /** Points left on all cards this evening; undefined for days that have not come, or not come any more. */
  readonly leftPoints: number | undefined;
  /** Estimates of the cards pulled in on this day. */
  readonly pulledInPoints: number;
  /** Surprise work that came up on this day; negative when earlier surprise was not needed after all. */
  readonly surprisePoints: number;
  /** How many cards were blocked this evening. */
  readonly blockedCards: number;
}

/** The data behind the burndown chart: time across, work left upward. */
export interface Burndown {
  readonly sprintName: string;
  readonly commitmentPoints: number;
  /** The sprint's days in order; days off are not among them. */
  readonly days: readonly BurndownDay[];
  /** The day on which this was drawn; undefined once the sprint is over. */
  readonly today: Day | undefined;
}

/** The span that a burndown covers. */
interface BurndownSpan {
  readonly sprintName: string;
  readonly startsOn: Day;
  readonly endsOn: Day;
  readonly calendar: WorkCalendar;
  /** Those who work on the sprint; with none, each working day counts the same. */
  readonly members: readonly OwnCalendar[];
  /** Undefined once the sprint is over; then every day up to `lastDay` has a value. */
  readonly today: Day | undefined;
  /** The day on which a sprint that is over was closed; its own last day when left out. */
  readonly lastDay?: Day | undefined;
  /**
   * False as long as too little was said of today for it to count: then the line ends in the evening before, so that a
   * morning isn't held against the evening's ideal. True when left out.
   */
  readonly isTodayOver?: boolean;
  /** The working days whose evening has come, to count blocked cards on; without them none are counted. */
  readonly evenings?: readonly Day[];
}

/** Left on the cards that were in the sprint on the evening of `day`. */
function leftOn(states: readonly CardState[], day: Day): number {
  return states.reduce((total, { card, entries, outOfSprint }) => {
    if (card.origin === 'pulled-in' && card.enteredOn > day) return total;
    if (outOfSprint.some(({ from, until }) => from <= day && (until === undefined || day < until)))
      return total;
    const last = entries.findLast(({ answer }) => answer.day <= day);
    return total + (last?.leftPoints ?? card.estimatePoints);
  }, 0);
}

/**
 * The burndown of a sprint. What happened on a day off shows on the next day of the sprint; a sprint
 * that has no working day shows its calendar days.
 */
export function burndownOf(states: readonly CardState[], span: BurndownSpan): Burndown {
  const working = workingDaysOf(span.calendar, span.startsOn, span.endsOn);
  const days = working.length > 0 ? working : daysFromTo(span.startsOn, span.endsOn);
  const commitmentPoints = states
    .filter(({ card }) => card.origin === 'planned')
    .reduce((total, { card }) => total + card.estimatePoints, 0);
  const remaining = remainingShares(days, span);
  const entries = states.flatMap((state) => state.entries);
  const rows = days.map((day, i): BurndownDay => {
    const isLast = i === days.length - 1;
    const previous = days[i - 1] ?? '';
    const until = isLast && span.endsOn > day ? span.endsOn : day;
    const within = (other: Day): boolean => other > previous && other <= until;
    return {
      day,
      idealPoints: commitmentPoints * (remaining[i] as number),
      leftPoints: isToCome(day, span) ? undefined : leftOn(states, until),
      pulledInPoints: states
        .filter(({ card }) => card.origin === 'pulled-in' && within(card.enteredOn))
        .reduce((total, { card }) => total + card.estimatePoints, 0),
      surprisePoints: entries
        .filter(({ answer }) => within(answer.day))
        .reduce((total, entry) => total + entry.surprisePoints, 0),
      blockedCards: span.evenings?.includes(day) ? blockedCardDays(states, [day]) : 0,
    };
  });
  return { sprintName: span.sprintName, commitmentPoints, days: rows, today: span.today };
}

function isToCome(day: Day, { today, isTodayOver = true, lastDay }: BurndownSpan): boolean {
  if (lastDay !== undefined && day > lastDay) return true;
  return today !== undefined && (day > today || (day === today && !isTodayOver));
}

/** Which share of the sprint's working time is still to come on the evening of each day. */
function remainingShares(days: readonly Day[], { calendar, members }: BurndownSpan): number[] {
  const byMembers = days.map((day) => memberDaysOf(calendar, members, [day]));
  const times = sumOf(byMembers) > 0 ? byMembers : days.map((day) => teamShareOf(calendar, day) || 1);
  const total = sumOf(times);
  return days.map((_, i) => sumOf(times.slice(i + 1)) / total);
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

/** Where the line of points left ends: position 0 is the start of the sprint, n the evening of its n-th day. */
export function leftEnd({ commitmentPoints, days }: Burndown) {
  const index = days.findLastIndex((day) => day.leftPoints !== undefined);
  const leftPoints = days[index]?.leftPoints ?? commitmentPoints;
  return {
    position: index + 1,
    day: days[index]?.day,
    leftPoints,
    idealPoints: days[index]?.idealPoints ?? commitmentPoints,
    /** Whether the line came up to its end from below. */
    rising: leftPoints > (days[index - 1]?.leftPoints ?? commitmentPoints),
  };
}
