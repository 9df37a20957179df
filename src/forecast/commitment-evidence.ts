/** What a closed sprint says about how much a team can keep and how much it takes in. Draws no conclusion. */
import type { WorkingTime } from './availability.ts';
import type { Interval } from './points-distribution.ts';

/** A sprint that is over and wasn't cancelled. Amounts are points; undefined where they were not recorded. */
export interface SprintEvidence extends WorkingTime {
  readonly commitmentPoints: number;
  readonly pulledInPoints: number | undefined;
  readonly surprisePoints: number | undefined;
  readonly velocityPoints: number | undefined;
  readonly committedFinishedPoints: number | undefined;
  /** Estimate of the largest committed card that was begun and not finished, 0 without one; undefined: cards not known. */
  readonly largestOpenPoints?: number | undefined;
}

function full(points: number): Interval {
  return { low: points, high: points };
}

function atLeast(points: number): Interval {
  return { low: points, high: Number.POSITIVE_INFINITY };
}

/**
 * How much of a commitment the team would have finished, had it been large enough.
 *
 * Where some of the commitment stayed open, that is what was finished of it. Where all of it was finished, it is the
 * velocity if work was pulled in, for a team pulls in what it has time for; else it is at least the velocity. Where
 * only the velocity is known, the committed part of it is at least velocity − pulled-in work.
 *
 * @returns bounds in points, `high` infinite where there was time to spare; undefined when the sprint says nothing.
 */
export function finishEvidence(sprint: SprintEvidence): Interval | undefined {
  const { commitmentPoints, pulledInPoints, velocityPoints, committedFinishedPoints } = sprint;
  if (committedFinishedPoints !== undefined && committedFinishedPoints < commitmentPoints) {
    return full(committedFinishedPoints);
  }
  if (committedFinishedPoints === undefined) {
    if (velocityPoints === undefined) return undefined;
    const least = Math.max(0, velocityPoints - (pulledInPoints ?? velocityPoints));
    if (velocityPoints < commitmentPoints) return { low: least, high: velocityPoints };
    if (least < commitmentPoints) return least > 0 ? atLeast(least) : undefined;
  }
  if (velocityPoints === undefined) return atLeast(commitmentPoints);
  const hasPulledIn = (pulledInPoints ?? 0) > 0 || velocityPoints > commitmentPoints;
  return hasPulledIn ? full(velocityPoints) : atLeast(velocityPoints);
}

/**
 * How much the team takes in over a sprint: commitment + pulled-in work. Where it pulled nothing in, it was full with
 * what it finished; where that isn't known, it took in at most the commitment.
 *
 * @returns bounds in points; undefined when the pulled-in work was not recorded.
 */
export function takeInEvidence(sprint: SprintEvidence): Interval | undefined {
  const { commitmentPoints, pulledInPoints, velocityPoints, committedFinishedPoints } = sprint;
  if (pulledInPoints === undefined) return undefined;
  if (pulledInPoints > 0) return full(commitmentPoints + pulledInPoints);
  const finished = velocityPoints ?? committedFinishedPoints;
  return finished === undefined ? { low: 0, high: commitmentPoints } : full(finished);
}
