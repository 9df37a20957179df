/** What a past sprint's end says of this one's, carried over to its size and progress. */
import type { SprintStart } from './sprint-likeness.ts';
import type { SprintSoFar } from './sprint-so-far.ts';

/** Whether it is known how far the sprint had come at the moment. */
export function isWatched(soFar: SprintSoFar | SprintStart): soFar is SprintSoFar {
  return 'finishedPoints' in soFar;
}

/**
 * What this sprint will have finished if the rest of its time brings as many points as an even share of a past sprint's, as far
 * as it holds them.
 */
export function evenlyFinished(
  { elapsedShare }: SprintStart,
  pastVelocityPoints: number,
  now: SprintSoFar,
): number {
  const most = Math.max(now.cardPoints, now.finishedPoints);
  return toHalfPoints(Math.min(most, now.finishedPoints + (1 - elapsedShare) * pastVelocityPoints));
}

/** Points come in halves, and so do the amounts that can be finished. */
const STEPS_PER_POINT = 2;

/**
 * What this sprint will have finished if it goes on as a past one did from the same moment.
 *
 * Formula: the same share of the open work gets finished. If the past sprint ended with more than it then held (work
 * was pulled in and finished), as many points more than this one holds; if it ended with less than was then finished
 * (cards were reopened), the same share of what is finished. Where the past sprint was not watched, its share of the
 * whole is used, and no less than is finished already. Rounded to half a point.
 * Units: points, never below 0. A past sprint with nothing open says nothing about open work: all of it counts as
 * finished if any was, else none.
 *
 * @example carriedOutcome({ cardPoints: 10, finishedPoints: 4, underwayPoints: 2 }, 7, { cardPoints: 20, finishedPoints: 6, underwayPoints: 3 }) === 13
 */
export function carriedOutcome(
  past: SprintSoFar | SprintStart,
  pastVelocityPoints: number,
  now: SprintSoFar,
): number {
  const finishedNow = now.finishedPoints;
  const sizeNow = Math.max(now.cardPoints, finishedNow);
  const finishedThen = isWatched(past) ? past.finishedPoints : undefined;
  const sizeThen = Math.max(past.cardPoints, finishedThen ?? 0);
  const outcome = (): number => {
    if (pastVelocityPoints > sizeThen) return sizeNow + (pastVelocityPoints - sizeThen);
    if (finishedThen === undefined)
      return Math.max(finishedNow, sizeNow * shareOf(pastVelocityPoints, sizeThen));
    if (pastVelocityPoints < finishedThen) return (finishedNow * pastVelocityPoints) / finishedThen;
    const openThen = sizeThen - finishedThen;
    const share = openThen > 0 ? (pastVelocityPoints - finishedThen) / openThen : finishedThen > 0 ? 1 : 0;
    return finishedNow + share * (sizeNow - finishedNow);
  };
  return toHalfPoints(outcome());
}

/** The nearest amount of points that there is. */
export function toHalfPoints(points: number): number {
  return Math.round(points * STEPS_PER_POINT) / STEPS_PER_POINT;
}

function shareOf(part: number, whole: number): number {
  return whole === 0 ? 0 : part / whole;
}
