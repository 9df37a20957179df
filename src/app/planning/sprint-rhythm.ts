/** When the team's next sprint may begin, and how far apart its sprints lie. Pure; it plans nothing. */
import { median } from '../../forecast/quantile.ts';
import { type Day, dayPlus, daysBetween } from '../../sprint/calendar.ts';
import { type WorkCalendar, workingDaysOf } from '../../sprint/work-calendar.ts';
import type { Sprint } from '../team/team.ts';

/** From the start of a sprint to the start of the next, where nothing is known of the team: two weeks are common. */
const DEFAULT_RHYTHM_DAYS = 14;
/** The weekend after a sprint of whole weeks belongs to no sprint. */
const WEEKEND_AND_LAST_DAY = 3;
/** Lately, so that a team that changed its rhythm is believed soon, and one long holiday changes nothing. */
const LATEST_DISTANCES = 6;
const DAYS_OF_WEEK = 7;
/** A team that is off for longer names the first day itself. */
const LONGEST_HOLIDAY_DAYS = 60;

type Span = Pick<Sprint, 'startsOn' | 'endsOn'>;

/** What decides where there is room for another sprint. */
export interface TakenDays {
  /** Earliest first. */
  readonly open: readonly Span[];
  /** The closed or cancelled sprint with the latest last day. */
  readonly lastFinished: Span | undefined;
}

/**
 * The next free working day, and a last day that makes the sprint as long as the one before it. Days of open sprints
 * are taken, and so is a day on which a sprint has just ended.
 */
export function nextSprintDays(team: WorkCalendar, { open, lastFinished }: TakenDays, today: Day): Span {
  const lastOpen = open.at(-1);
  const previous = lastOpen ?? lastFinished;
  const isDayTaken = lastOpen !== undefined || lastFinished?.endsOn === today;
  const free = previous && isDayTaken ? dayPlus(previous.endsOn, 1) : today;
  const startsOn = nextWorkingDay(free > today ? free : today, team);
  const lengthDays = previous
    ? daysBetween(previous.startsOn, previous.endsOn)
    : DEFAULT_RHYTHM_DAYS - WEEKEND_AND_LAST_DAY;
  return { startsOn, endsOn: dayPlus(startsOn, lengthDays) };
}

function nextWorkingDay(day: Day, calendar: WorkCalendar): Day {
  return workingDaysOf(calendar, day, dayPlus(day, LONGEST_HOLIDAY_DAYS))[0] ?? day;
}

/**
 * Calendar days from the start of a sprint to the start of the next: the median of the latest six distances, to the
 * nearest day; with a single sprint its own length in whole weeks; without any, two weeks.
 *
 * @param sprints closed and open ones, in any order
 */
export function sprintRhythmDays(sprints: readonly Span[]): number {
  const starts = sprints.map(({ startsOn }) => startsOn).toSorted();
  const distances = starts
    .slice(1)
    .map((start, i) => daysBetween(starts[i] as Day, start))
    .filter((days) => days > 0);
  const usual = median(distances.slice(-LATEST_DISTANCES));
  if (typeof usual === 'number') return Math.round(usual);
  const [only] = sprints;
  if (!only) return DEFAULT_RHYTHM_DAYS;
  return Math.ceil((daysBetween(only.startsOn, only.endsOn) + 1) / DAYS_OF_WEEK) * DAYS_OF_WEEK;
}
