/** How much working time a sprint holds beside another one. */
import { isDefined, type Ratio } from '../sprint/undefined-value.ts';
import { median } from './quantile.ts';

export interface WorkingTime {
  readonly workingDays: number | undefined;
  /** Working days of all members together, without those away. */
  readonly memberDays: number | undefined;
}

export interface ComingTime extends WorkingTime {
  /** Working days of all members together as if nobody were away. */
  readonly memberDaysWhenAllThere: number | undefined;
}

/** How much larger the coming sprint is than each past one, and in how many of those people's absence was known. */
export interface RelativeTime {
  /** One for each past sprint: above 1 when the coming one holds more time. Undefined for a sprint without any. */
  readonly factors: readonly (number | undefined)[];
  readonly measuredBy: 'member-days' | 'working days' | 'sprints';
  /** Past sprints where everybody was taken to have been there. */
  readonly assumedSprints: number;
  /** Whether nothing is known of who will be away in the coming sprint. */
  readonly isComingAssumed: boolean;
}

/**
 * Time of the coming sprint ÷ time of a past one. Time is member-days where they are known; where they are not,
 * working days × the usual number of members there (the median of the sprints where both are known, else the
 * number when all are there). Without members it is working days, and without those every sprint counts the same.
 *
 * @example relativeTime([{ workingDays: 10, memberDays: 50 }], { workingDays: 10, memberDays: 40, memberDaysWhenAllThere: 50 }).factors[0] === 0.8
 */
export function relativeTime(past: readonly WorkingTime[], coming: ComingTime): RelativeTime {
  const perDay = past.flatMap(({ workingDays, memberDays }) =>
    workingDays !== undefined && workingDays > 0 && memberDays !== undefined
      ? [memberDays / workingDays]
      : [],
  );
  const usual: Ratio = median(
    perDay.length === 0 && coming.memberDaysWhenAllThere !== undefined && coming.workingDays
      ? [coming.memberDaysWhenAllThere / coming.workingDays]
      : perDay,
  );
  const memberDaysOf = ({ workingDays, memberDays }: WorkingTime): number | undefined => {
    if (memberDays !== undefined) return memberDays;
    return workingDays !== undefined && isDefined(usual) ? workingDays * usual : undefined;
  };
  const factorsBy = (
    timeOf: (time: WorkingTime) => number | undefined,
  ): (number | undefined)[] | undefined => {
    const next = timeOf(coming);
    const times = past.map(timeOf);
    if (next === undefined || times.includes(undefined)) return undefined;
    return times.map((time) => (time === 0 ? undefined : next / (time as number)));
  };
  const isComingAssumed = coming.memberDays === undefined;
  const byMembers = factorsBy(memberDaysOf);
  if (byMembers) {
    const assumedSprints = past.filter(({ memberDays }) => memberDays === undefined).length;
    return { factors: byMembers, measuredBy: 'member-days', assumedSprints, isComingAssumed };
  }
  const byDays = factorsBy(({ workingDays }) => workingDays);
  if (byDays)
    return { factors: byDays, measuredBy: 'working days', assumedSprints: past.length, isComingAssumed };
  return { factors: past.map(() => 1), measuredBy: 'sprints', assumedSprints: past.length, isComingAssumed };
}
