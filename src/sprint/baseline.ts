/** What a sprint's velocity is compared with: another sprint of the team, or the median of its first three. */

/** How long a sprint was and how many worked in it; both above 0. */
export interface WorkingTime {
  readonly workingDays: number;
  /** Working days of all members together, days off left out. */
  readonly memberDays: number;
}

export interface Baseline {
  /** Undefined: the median of the first three sprints. */
  readonly name: string | undefined;
  /** Above 0. */
  readonly velocityPoints: number;
  /** Missing where it isn't known. */
  readonly time?: WorkingTime | undefined;
}

/** A baseline made from a list of closed sprints. */
export interface PastBaseline {
  readonly baseline: Baseline;
  /** The first sprint that it is made from, by its place in the list. */
  readonly from: number;
  /** Undefined for a median. */
  readonly sprintId: string | undefined;
}

/** A closed sprint as far as velocities are compared. Where an import did not say, amounts are undefined. */
export interface MeasuredSprint {
  readonly name: string;
  readonly velocityPoints: number | undefined;
  readonly workingDays: number;
  readonly memberDays: number | undefined;
}

export const MEDIAN_SPRINTS = 3;

/** Length or size that differs by no more than one part in so many counts as the same. Common practice, no published source. */
const ABOUT_THE_SAME = 10;

export function workingTime({
  workingDays,
  memberDays,
}: Omit<MeasuredSprint, 'name'>): WorkingTime | undefined {
  return memberDays !== undefined && memberDays > 0 && workingDays > 0
    ? { workingDays, memberDays }
    : undefined;
}

/** @param sprint its velocity above 0 */
export function baselineFrom(sprint: MeasuredSprint): Baseline {
  return { name: sprint.name, velocityPoints: sprint.velocityPoints ?? 0, time: workingTime(sprint) };
}

/**
 * The median of velocity, working days and member-days, each by itself, over the first three sprints with a velocity
 * above 0; undefined before there are three. One unusual sprint at the start doesn't bend it.
 *
 * @param sprints oldest first
 */
export function medianBaseline(sprints: readonly MeasuredSprint[]): Baseline | undefined {
  const first = sprints.filter(({ velocityPoints = 0 }) => velocityPoints > 0).slice(0, MEDIAN_SPRINTS);
  if (first.length < MEDIAN_SPRINTS) return undefined;
  const times = first.flatMap((sprint) => workingTime(sprint) ?? []);
  return {
    name: undefined,
    velocityPoints: median(first.map(({ velocityPoints = 0 }) => velocityPoints)),
    time:
      times.length < MEDIAN_SPRINTS
        ? undefined
        : {
            workingDays: median(times.map(({ workingDays }) => workingDays)),
            memberDays: median(times.map(({ memberDays }) => memberDays)),
          },
  };
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[(values.length - 1) / 2] as number;
}

/**
 * Velocity growth with the working time taken out.
 *
 * Formula: (velocity ÷ member-days) ÷ (velocity of the baseline ÷ its member-days). No unit; 0 or more, 1 means 100%.
 * Undefined where the member-days of either aren't known, and where both the length (working days) and the size (member-days
 * by working day) are within a tenth of the baseline's: then the plain growth says the same.
 * How it misleads: a new member counts as one who has been there for years.
 * Source: common practice, no published source.
 *
 * @example growthPerMemberDay(20, { workingDays: 10, memberDays: 80 }, { name: 'A', velocityPoints: 10, time: { workingDays: 10, memberDays: 40 } }) === 1
 */
export function growthPerMemberDay(
  velocityPoints: number,
  time: WorkingTime | undefined,
  baseline: Pick<Baseline, 'velocityPoints' | 'time'>,
): number | undefined {
  const then = baseline.time;
  if (!time || !then) return undefined;
  const isSame = (now: number, before: number) => Math.abs(now - before) * ABOUT_THE_SAME <= before;
  const isAsLong = isSame(time.workingDays, then.workingDays);
  // Member-days ÷ working days of both, brought to one denominator so that the tenth is exact.
  const isAsLarge = isSame(time.memberDays * then.workingDays, then.memberDays * time.workingDays);
  return isAsLong && isAsLarge ? undefined : memberDayGrowth(velocityPoints, time, baseline);
}

/**
 * The same where length and size are those of the baseline as well, for a line over sprints some of which differ.
 *
 * @example memberDayGrowth(10, { workingDays: 10, memberDays: 40 }, { velocityPoints: 10, time: { workingDays: 10, memberDays: 40 } }) === 1
 */
export function memberDayGrowth(
  velocityPoints: number,
  time: WorkingTime | undefined,
  { velocityPoints: baselinePoints, time: then }: Pick<Baseline, 'velocityPoints' | 'time'>,
): number | undefined {
  if (!time || !then) return undefined;
  return (velocityPoints * then.memberDays) / (time.memberDays * baselinePoints);
}
