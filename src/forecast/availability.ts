/** How much working time a sprint holds beside another one. */
import { isDefined } from '../sprint/undefined-value.ts';
import { median } from './quantile.ts';

export interface WorkingTime {
  readonly workingDays: number | undefined;
  /** Working days of all members together, without those away. */
  readonly memberDays: number | undefined;
  /** How many whole members the team had, where nobody knows who was there on which day. */
  readonly membersThen?: number | undefined;
}

export interface ComingTime {
  readonly workingDays: number | undefined;
  /** Working days of all members together, less those that are known to be off; undefined: nothing is known of these. */
  readonly memberDays: number | undefined;
  /** Working days of all members together as if nobody were away. */
  readonly memberDaysWhenAllThere: number | undefined;
}

/** Whom a past sprint is taken to have had, best first: the members of that time, as many as around it, or of today. */
const ASSUMED = ['members-then', 'members-around', 'members-now'] as const;
export type AssumedMembers = (typeof ASSUMED)[number];

/** How much larger the coming sprint is than each past one, and what that is measured by. */
export interface RelativeTime {
  /** One for each past sprint: above 1 when the coming one holds more time. Undefined for a sprint without any. */
  readonly factors: readonly (number | undefined)[];
  readonly measuredBy: 'member-days' | 'working-days' | 'sprints';
  /** Of the coming sprint, in that measure; undefined where every sprint counts the same. */
  readonly comingTime: number | undefined;
  /** Past sprints whose member-days aren't known, and the weakest of what is taken instead. */
  readonly assumed: { readonly sprints: number; readonly members: AssumedMembers } | undefined;
  /** Whether nothing is known of who will be away in the coming sprint. */
  readonly isComingAssumed: boolean;
}

/** Around a sprint: in so many of the nearest ones that know. One alone may have been the holidays. */
const AROUND = 3;

/**
 * Time of the coming sprint ÷ time of a past one. Time is member-days. Where those of a past sprint aren't known they
 * are its working days × the members of that time, or else × the median members a day of the three nearest sprints that
 * know, or else × the members of the coming sprint, and then the size of the team makes no difference. Where nobody
 * knows who will be away, all are taken to be there. Without members time is working days, and without those every
 * sprint counts the same.
 *
 * @example relativeTime([{ workingDays: 10, memberDays: 50 }], { workingDays: 10, memberDays: 40, memberDaysWhenAllThere: 50 }).factors[0] === 0.8
 */
export function relativeTime(past: readonly WorkingTime[], coming: ComingTime): RelativeTime {
  const around = membersAround(past);
  const comingDays =
    coming.memberDays ?? coming.memberDaysWhenAllThere ?? times(coming.workingDays, around(past.length));
  const now = aDay({ ...coming, memberDays: coming.memberDaysWhenAllThere ?? comingDays });
  const whom: AssumedMembers[] = [];
  const days = past.map(({ workingDays, memberDays, membersThen }, i) => {
    if (memberDays !== undefined) return memberDays;
    const taken = [membersThen, around(i), now] as const;
    const place = taken.findIndex((members) => members !== undefined);
    if (place >= 0) whom.push(ASSUMED[place] as AssumedMembers);
    return times(workingDays, taken[place]);
  });
  const weakest = ASSUMED.findLast((members) => whom.includes(members));
  const isComingAssumed = coming.memberDays === undefined;
  const byMembers = factorsOf(days, comingDays);
  if (byMembers) {
    const assumed = weakest && { sprints: whom.length, members: weakest };
    return { ...byMembers, measuredBy: 'member-days', assumed, isComingAssumed };
  }
  const byDays = factorsOf(
    past.map(({ workingDays }) => workingDays),
    coming.workingDays,
  );
  if (byDays) return { ...byDays, measuredBy: 'working-days', assumed: undefined, isComingAssumed };
  return {
    factors: past.map(() => 1),
    measuredBy: 'sprints',
    comingTime: undefined,
    assumed: undefined,
    isComingAssumed,
  };
}

function factorsOf(
  past: readonly (number | undefined)[],
  coming: number | undefined,
): Pick<RelativeTime, 'factors' | 'comingTime'> | undefined {
  if (coming === undefined || past.includes(undefined)) return undefined;
  return {
    factors: past.map((time) => (time === 0 ? undefined : coming / (time as number))),
    comingTime: coming,
  };
}

/** How many members a day there usually were around a place in the past. */
function membersAround(past: readonly WorkingTime[]): (place: number) => number | undefined {
  const known = past.flatMap((time, at) => {
    const members = aDay(time);
    return members === undefined ? [] : [{ at, members }];
  });
  return (place) => {
    const nearest = known
      .toSorted((a, b) => Math.abs(a.at - place) - Math.abs(b.at - place))
      .slice(0, AROUND);
    const usual = median(nearest.map(({ members }) => members));
    return isDefined(usual) ? usual : undefined;
  };
}

function aDay({ workingDays, memberDays }: WorkingTime): number | undefined {
  return workingDays && memberDays !== undefined ? memberDays / workingDays : undefined;
}

function times(days: number | undefined, members: number | undefined): number | undefined {
  return days === undefined || members === undefined ? undefined : days * members;
}
