/** When a team and its members work: their weekdays, less the days and half days that they have off. */
import { type Day, dayPlus, type Weekday, weekdayOf, workingDaysFromTo } from './calendar.ts';

/** Days without work, each in ascending order; no day is in both. */
export interface DaysOff {
  readonly full: readonly Day[];
  readonly half: readonly Day[];
}

export const NO_DAYS_OFF: DaysOff = { full: [], half: [] };

/** How much of the day is work: a whole day, half of one, or none. */
export type DayShare = 0 | 0.5 | 1;

/** With these days taken off in whole or half, or worked again (1); what was said of them before no longer counts. */
export function withDaysOff({ full, half }: DaysOff, days: readonly Day[], share: DayShare): DaysOff {
  const said = new Set(days);
  const others = (list: readonly Day[]): Day[] => list.filter((day) => !said.has(day));
  const sorted = (list: readonly Day[]): Day[] => [...new Set(list)].sort();
  return {
    full: sorted(share === 0 ? [...others(full), ...days] : others(full)),
    half: sorted(share === 0.5 ? [...others(half), ...days] : others(half)),
  };
}

export interface WorkCalendar {
  /** ISO weekdays, 1 is Monday. */
  readonly workingDays: readonly Weekday[];
  readonly daysOff: DaysOff;
}

/** Weekdays of a member that no longer hold. */
export interface WeekdaysBefore {
  /** The first day on which others held. */
  readonly until: Day;
  /** Undefined: all of the team's. */
  readonly worksOn?: readonly Weekday[] | undefined;
}

/** With other weekdays from the day on; on the days before, those hold that held then. */
export function withWeekdays<Member extends OwnCalendar>(
  member: Member,
  worksOn: readonly Weekday[] | undefined,
  from: Day,
): Member {
  const { worksOnBefore } = member;
  if (member.worksOn?.join() === worksOn?.join()) return member;
  // What was said earlier on the same day held on no day.
  const saidToday = worksOnBefore.at(-1)?.until === from;
  const before = saidToday ? worksOnBefore : [...worksOnBefore, { until: from, worksOn: member.worksOn }];
  return { ...member, worksOn, worksOnBefore: before };
}

function weekdaysOn({ worksOn, worksOnBefore }: OwnCalendar, day: Day): readonly Weekday[] | undefined {
  const before = worksOnBefore.find(({ until }) => day < until);
  return before ? before.worksOn : worksOn;
}

/** What a member's own calendar adds to the team's. */
export interface OwnCalendar {
  /** ISO weekdays on which the member works; undefined: all of the team's. */
  readonly worksOn: readonly Weekday[] | undefined;
  /** Weekdays that held before, in order of time. */
  readonly worksOnBefore: readonly WeekdaysBefore[];
  readonly daysOff: DaysOff;
  /** The first day on the team; undefined: from before it was kept. */
  readonly joinedOn: Day | undefined;
  /** The first day no more on the team; undefined: still on it. */
  readonly leftOn: Day | undefined;
}

function shareLeft({ full, half }: DaysOff, day: Day): DayShare {
  if (full.includes(day)) return 0;
  return half.includes(day) ? 0.5 : 1;
}

export function teamShareOf({ workingDays, daysOff }: WorkCalendar, day: Day): DayShare {
  return workingDays.includes(weekdayOf(day)) ? shareLeft(daysOff, day) : 0;
}

/** The days from `from` to `to`, both included, on which the team works; half days too. */
export function workingDaysOf(calendar: WorkCalendar, from: Day, to: Day): Day[] {
  return workingDaysFromTo(from, to, calendar.workingDays).filter(
    (day) => !calendar.daysOff.full.includes(day),
  );
}

/** Whether the team works on the day and on none after it until Friday, with which a week ends here. */
export function isLastOfWeek(calendar: WorkCalendar, day: Day): boolean {
  const friday = 5;
  const untilFriday = (friday - weekdayOf(day) + 7) % 7;
  return workingDaysOf(calendar, day, dayPlus(day, untilFriday)).join() === day;
}

/** A member's share of a day: none before joining and from leaving on, on other weekdays, and on days off. */
export function memberShareOf(team: WorkCalendar, member: OwnCalendar, day: Day): DayShare {
  const { daysOff, joinedOn, leftOn } = member;
  if (joinedOn !== undefined && day < joinedOn) return 0;
  if (leftOn !== undefined && day >= leftOn) return 0;
  const worksOn = weekdaysOn(member, day);
  if (worksOn !== undefined && !worksOn.includes(weekdayOf(day))) return 0;
  // Half a day off of the team's and half a day off of one's own are taken for the same half.
  return Math.min(teamShareOf(team, day), shareLeft(daysOff, day)) as DayShare;
}

/**
 * Working days of all members together, in whole and half days.
 *
 * @param days the days that count
 * @param isAway whether a member said on the day that they were away
 */
export function memberDaysOf<Member extends OwnCalendar>(
  team: WorkCalendar,
  members: readonly Member[],
  days: readonly Day[],
  isAway: (member: Member, day: Day) => boolean = () => false,
): number {
  let sum = 0;
  for (const member of members) {
    for (const day of days) if (!isAway(member, day)) sum += memberShareOf(team, member, day);
  }
  return sum;
}

/**
 * How many members the team has on the day, those who work part of the week as that part; days off don't count.
 *
 * @param members with those who left since
 */
export function wholeMembersOn(
  { workingDays }: Pick<WorkCalendar, 'workingDays'>,
  members: readonly OwnCalendar[],
  day: Day,
): number {
  const team = { workingDays, daysOff: NO_DAYS_OFF };
  const there = members
    .filter(({ joinedOn, leftOn }) => (joinedOn ?? day) <= day && (leftOn === undefined || day < leftOn))
    .map((member) => ({ ...member, daysOff: NO_DAYS_OFF, joinedOn: undefined, leftOn: undefined }));
  const week = workingDaysOf(team, day, dayPlus(day, 6));
  return memberDaysOf(team, there, week) / week.length;
}
