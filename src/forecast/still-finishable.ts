/** How much work the team can still get through before the sprint's end, as its status sees it: the open work, and more. */
import { chanceOfAtLeast } from './load-signal.ts';
import type { Amount } from './planned-and-projected.ts';
import type { SprintSoFar } from './sprint-so-far.ts';
import type { WorkChance } from './whole-cards.ts';

/** Against rounding: work that just fits must not ask for half a point more. */
const SLACK = 1e-9;

/**
 * The chance to get through so much work, so that a card pulled in now is told what the status would tell with it.
 *
 * Formula: with V the points finished by the end, C all cards, F those finished, U what is underway in the open ones and O the rest
 * of their estimates: up to O it is P(V − F ≥ x · (1 + U ÷ O)). Beyond, it is the chance to finish everything if the sprint held
 * x − O points more, P(V′ ≥ C + x − O), and no more than for less work.
 * Units: points of estimates that are worked off; a chance from 0 to 1 out.
 * How it misleads: as the projection and the pace do from which the amounts come (`pacedVelocity`).
 * Source: ours.
 *
 * @param velocityWith the points finished by the end, if the sprint held so many points more
 * @example stillFinishable({ cardPoints: 12, finishedPoints: 8, underwayPoints: 0 }, (more) => ({ cdf: (points) => Number(points >= 12 + more / 2) }))(4) === 1
 */
export function stillFinishable(
  { cardPoints, finishedPoints, underwayPoints }: SprintSoFar,
  velocityWith: (morePoints: number) => Amount,
): WorkChance {
  const openPoints = Math.max(0, cardPoints - finishedPoints);
  const leftPoints = Math.max(0, openPoints - underwayPoints);
  const allPoints = finishedPoints + openPoints;
  const reaches = (amount: Amount, points: number): number =>
    chanceOfAtLeast(amount, Math.ceil(2 * points - SLACK) / 2);
  const known = new Map<number, number>();
  const allWith = (morePoints: number): number => {
    const chance =
      known.get(morePoints) ??
      (allPoints + morePoints === finishedPoints
        ? 1
        : reaches(velocityWith(morePoints), allPoints + morePoints));
    known.set(morePoints, chance);
    return chance;
  };
  return (points) => {
    if (points <= 0) return 1;
    if (points <= leftPoints) {
      return reaches(velocityWith(0), finishedPoints + (points * openPoints) / leftPoints);
    }
    const more = points - leftPoints;
    return Math.min(...[0, ...sizesBelow(more), more].map(allWith));
  };
}

/** Other past sprints may speak of a larger sprint, and a little better of it: less work is never told to be less likely. */
function sizesBelow(points: number): number[] {
  const sizes: number[] = [];
  for (let [size, next] = [1, 2]; size < points; [size, next] = [next, size + next]) sizes.push(size);
  return sizes;
}
