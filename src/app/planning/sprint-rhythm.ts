/** When the team's next sprint may begin, and how far apart its sprints lie. Pure; it plans nothing. */
import { median } from '../../forecast/quantile.ts';
import { type Day, dayPlus, daysBetween } from '../../sprint/calendar.ts';
import { type WorkCalendar, workingDaysOf } from '../../sprint/work-calendar.ts';
import type { Sprint } from '../team/team.ts';

/** From the start of a sprint to the start of the next, where nothing is known of the team: two weeks are common. */
const DEFAULT_RHYTHM_DAYS = 14;
/** A sprint’s last week that is at least so long is a whole one: weekends and holidays take the rest. */
const WHOLE_WEEK_AT_LEAST_DAYS = 4;
/** Lately, so that a team that changed its rhythm is believed soon, and one long holiday changes nothing. */
const LATEST_DISTANCES = 6;
/** So many sprints with different first days say all that is asked of them. */
export const RHYTHM_SPRINTS = LATEST_DISTANCES + 1;
const DAYS_OF_WEEK = 7;
/** A team that is off for longer names the first day itself. */
const LONGEST_HOLIDAY_DAYS = 60;

type Span = Pick<Sprint, 'startsOn' | 'endsOn'>;

/** What decides where there is room for another sprint. */
interface TakenDays {
  /** Earliest first. */
  readonly open: readonly Span[];
  /** The closed or cancelled sprint with the latest last day. */
  readonly lastFinished: Span | undefined;
}

/**
 * The next free working day, and the last working day of as many weeks as the sprint before it had. Days of open sprints
 * are taken, and so is a day on which a sprint has just ended.
 *
 * @param firstDay where the team has named it
 */
export function nextSprintDays(
  team: WorkCalendar,
  { open, lastFinished }: TakenDays,
  today: Day,
  firstDay?: Day,
): Span {
  const lastOpen = open.at(-1);
  const previous = lastOpen ?? lastFinished;
  const isDayTaken = lastOpen !== undefined || lastFinished?.endsOn === today;
  const free = previous && isDayTaken ? dayPlus(previous.endsOn, 1) : today;
  const startsOn = firstDay ?? nextWorkingDay(free > today ? free : today, team);
  const days = previous
    ? wholeWeeks(daysBetween(previous.startsOn, previous.endsOn) + 1)
    : DEFAULT_RHYTHM_DAYS;
  return { startsOn, endsOn: workingDaysOf(team, startsOn, dayPlus(startsOn, days - 1)).at(-1) ?? startsOn };
}

/** A sprint that is shorter for once, for a holiday or a late start, must not make the next one shorter. */
function wholeWeeks(days: number): number {
  const restDays = days % DAYS_OF_WEEK;
  return restDays < WHOLE_WEEK_AT_LEAST_DAYS ? days : days - restDays + DAYS_OF_WEEK;
}

function nextWorkingDay(day: Day, calendar: WorkCalendar): Day {
  return workingDaysOf(calendar, day, dayPlus(day, LONGEST_HOLIDAY_DAYS))[0] ?? day;
}

/**
 * Calendar days from the start of a sprint to the start of the next: the median of the latest six distances, to the
 * nearest day; with a single sprint its own length in whole weeks; without any, two weeks.
 *
 * @param sprints closed and open ones, in any order; of many only the latest matter
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
