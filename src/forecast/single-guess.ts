/**
 * The best single guess of what a sprint will have finished: the middle of what past sprints say of it, and where hardly
 * any of the team's own is alike, also what the team usually finishes of its open work.
 */
import { isWatched } from './carried-outcome.ts';
import { median } from './quantile.ts';
import type { SprintStart } from './sprint-likeness.ts';
import type { SprintSoFar } from './sprint-so-far.ts';
import type { WeightedPoints } from './weighted-points.ts';

/** How many of a team's latest sprints say what is usual; with fewer than the least, those of all teams say it. */
const LATEST_SPRINTS = 12;
const LEAST_SPRINTS = 3;
/** Where no sprint is alike, so much of the guess goes by what is usual … */
const MOST_BY_USUAL = 0.5;
/** … and half as much once the sprints that are alike make up so much of one. */
const HALVED_AT_ALIKE_SPRINTS = 0.25;

/** A past sprint at the moment that is asked about. */
interface PastSprint {
  readonly team: string;
  readonly soFar: SprintSoFar | SprintStart;
  readonly velocityPoints: number;
}

/**
 * The mean of the middle fifth of what past sprints say, which is steadier than the bare median: that jumps from one
 * past sprint's outcome to another's. What is usual counts for ½·¼ ÷ (¼ + alike sprints) beside it.
 *
 * Units: points, between the least and the most that any past sprint says. Without a usual share it is the middle fifth.
 * How it misleads: it is one number; the intervals say how far off it may be.
 *
 * @param said what past sprints say of this one
 * @param alikeSprints the team's own, each counted by how alike it is
 * @param usual of `usualOutcome`
 * @example Math.round(singleGuess(weightedPoints([10, 20], [1, 1]), 0.25, 19)) === 16
 */
export function singleGuess(said: WeightedPoints, alikeSprints: number, usual: number | undefined): number {
  const middle = middleOf(said);
  if (usual === undefined) return middle;
  const share = (MOST_BY_USUAL * HALVED_AT_ALIKE_SPRINTS) / (HALVED_AT_ALIKE_SPRINTS + alikeSprints);
  const [least, most] = [said.points[0], said.points.at(-1)] as [number, number];
  return (1 - share) * middle + share * Math.min(most, Math.max(least, usual));
}

/** Mean of the middle fifth. */
function middleOf({ points, chances }: WeightedPoints): number {
  const [from, to] = [0.4, 0.6];
  let before = 0;
  let sum = 0;
  for (const [i, chance] of chances.entries()) {
    const upTo = before + chance;
    sum += (points[i] as number) * Math.max(0, Math.min(upTo, to) - Math.max(before, from));
    before = upTo;
  }
  return sum / (to - from);
}

/**
 * What the sprint will have finished if the team finishes as much of its open work as it usually does, however much
 * that is.
 *
 * Formula: finished + open × the median of (velocity − finished) ÷ open over the team's latest twelve watched sprints
 * with open work at the same share of their time; with fewer than three of them, over those of all teams.
 * Units: points. Undefined where there are fewer than three of these, too.
 *
 * @param sprints of all teams, oldest first
 * @example usualOutcome([], 'A', { cardPoints: 20, finishedPoints: 0, underwayPoints: 0 }) === undefined
 */
export function usualOutcome(
  sprints: readonly PastSprint[],
  team: string,
  now: SprintSoFar,
): number | undefined {
  const own: number[] = [];
  const all: number[] = [];
  for (let i = sprints.length - 1; i >= 0 && own.length < LATEST_SPRINTS; i -= 1) {
    const past = sprints[i] as PastSprint;
    if (!isWatched(past.soFar) || openPoints(past.soFar) === 0) continue;
    const share = (past.velocityPoints - past.soFar.finishedPoints) / openPoints(past.soFar);
    all.push(share);
    if (past.team === team) own.push(share);
  }
  const known = own.length < LEAST_SPRINTS ? all : own;
  if (known.length < LEAST_SPRINTS) return undefined;
  return now.finishedPoints + openPoints(now) * (median(known) as number);
}

function openPoints({ cardPoints, finishedPoints }: SprintSoFar): number {
  return Math.max(0, cardPoints - finishedPoints);
}
