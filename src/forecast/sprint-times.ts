/** How much working time a team had in its sprints, in one unit for all of them. */
import { median } from './quantile.ts';
import type { PacedSprint } from './team-pace.ts';

export interface TimedSprint {
  readonly velocityPoints: number | undefined;
  readonly workingDays: number;
  /** Working days of all members together, without those away; undefined where it isn't known who was there. */
  readonly memberDays: number | undefined;
}

/**
 * How many members are at work on a working day: the median of the sprints where it is known, else `otherwise`.
 *
 * @example usualMembers([{ velocityPoints: 8, workingDays: 10, memberDays: 40 }], 7) === 4
 */
export function usualMembers(sprints: readonly TimedSprint[], otherwise: number): number {
  const known = sprints.flatMap(({ workingDays, memberDays }) =>
    workingDays > 0 && memberDays !== undefined ? [memberDays / workingDays] : [],
  );
  const usual = median(known);
  return typeof usual === 'number' && usual > 0 ? usual : otherwise;
}

/**
 * Sprints with their time in member-days: those that are known, else working days × the usual members. Sprints without
 * any time or without a known velocity are left out, since they show no pace.
 *
 * How it misleads: a member-day of an expert counts as much as that of a beginner, and where it isn't known who was
 * there, a change in the number of members looks like a change of pace.
 *
 * @param sprints oldest first
 * @example pacedSprints([{ velocityPoints: 8, workingDays: 10, memberDays: undefined }], 4)[0].time === 40
 */
export function pacedSprints(sprints: readonly TimedSprint[], members: number): PacedSprint[] {
  return sprints.flatMap(({ velocityPoints, workingDays, memberDays }) => {
    const time = memberDays ?? workingDays * members;
    return velocityPoints === undefined || !(time > 0) ? [] : [{ velocityPoints, time }];
  });
}
