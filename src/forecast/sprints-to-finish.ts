import { normalCdf } from './normal-distribution.ts';
import type { WeightedPoints } from './weighted-points.ts';

export interface BacklogPace {
  /** Above 0. */
  readonly backlogPoints: number;
  /** The velocity of a single sprint, in multiples of half a point, not all 0. */
  readonly velocity: WeightedPoints;
  /** Standard deviation of the logarithm of the factor by which the coming pace as a whole may differ. */
  readonly paceDeviation: number;
  /** Points by which the body of work grows with each sprint. */
  readonly scopeGrowthPoints: number;
}

/** Beyond so many deviations of the pace a total counts as enough: 0.14% of the chance at the most. */
const FURTHEST_DEVIATIONS = 3;
/** Some ten thousand such chances are still below 1e-12. */
const NEGLIGIBLE = 1e-16;

/**
 * The chance that the work is finished by the end of sprint 0, 1, 2 …, until one of them is `enough` or the sprints
 * are `most`.
 *
 * Formula: P(T ≤ k) = P(F·Sₖ ≥ B + k·g) = Σₛ P(Sₖ = s)·Φ(ln(s ÷ (B + k·g)) ÷ σ), where Sₖ is the sum of k
 * velocities, g the growth of scope a sprint, and F the pace factor, whose logarithm is normal with mean 0 and
 * deviation σ; with σ = 0 it is P(Sₖ ≥ B + k·g). Where scope grows, the work may be finished at one sprint and
 * not at the next, if nobody stops there; the chance so far reached is then kept, a little less than the truth.
 * Units: chances from 0 to 1, index = sprints.
 * How it misleads: it takes the sprints for independent of each other but for their common pace.
 *
 * @example chancesToFinish({ backlogPoints: 3, velocity: weightedPoints([1, 2], [1, 1]), paceDeviation: 0, scopeGrowthPoints: 0 }, { enough: 1, most: 9 }) === [0, 0, 0.75, 1]
 */
export function chancesToFinish(
  { backlogPoints, velocity, paceDeviation, scopeGrowthPoints }: BacklogPace,
  { enough, most }: { readonly enough: number; readonly most: number },
): number[] {
  const growing = (sprints: number): number => backlogPoints + sprints * scopeGrowthPoints;
  const capPoints = (sprints: number): number =>
    growing(sprints) * Math.exp(FURTHEST_DEVIATIONS * paceDeviation);
  const chances = [0];
  let reached = 0;
  for (const sum of sprintSums(velocity, capPoints)) {
    reached = Math.max(reached, chanceOfEnough(sum, growing(sum.sprints), paceDeviation));
    chances.push(reached);
    if (reached >= enough || sum.sprints >= most) break;
  }
  return chances;
}

function chanceOfEnough(
  { chances, unitPoints, beyondChance }: SprintSum,
  neededPoints: number,
  paceDeviation: number,
): number {
  const logNeeded = Math.log(neededPoints);
  let chance = beyondChance;
  for (let i = 0; i < chances.length; i += 1) {
    const mass = chances[i] as number;
    if (mass < NEGLIGIBLE) continue;
    const total = i * unitPoints;
    if (paceDeviation === 0) chance += total >= neededPoints ? mass : 0;
    else chance += mass * normalCdf((Math.log(total) - logNeeded) / paceDeviation);
  }
  return Math.min(1, chance);
}

/**
 * What several sprints finish together, by exact convolution: no simulation, no rounding of chances.
 *
 * The chances of each total after some sprints, up to a cap.
 */
export interface SprintSum {
  readonly sprints: number;
  /** `chances[i]` is the chance that the total is `i × unitPoints`. */
  readonly chances: Float64Array;
  readonly unitPoints: number;
  /** The chance that the total is beyond the last of them. */
  readonly beyondChance: number;
}

/** Points come in halves. */
const STEPS_PER_POINT = 2;

/**
 * The distribution of the total after 1, 2, 3 … sprints, each drawn from the same distribution on its own.
 *
 * Formula: P(S₁ = s) = P(V = s); P(Sₖ = s) = Σᵥ P(V = v)·P(Sₖ₋₁ = s − v).
 * Units: points, in steps of the greatest amount that all velocities are multiples of.
 * How it misleads: a team's good and bad sprints do not come independently of each other; who uses this must add
 * what that does (`release-forecast.ts`).
 *
 * @example sprintSums(weightedPoints([1, 2], [1, 1]), () => 9).next().value.chances.at(2) === 0.5
 * @param velocity multiples of half a point, not all 0.
 * @param capPoints totals above it, after so many sprints, are only counted together from then on. Never falls.
 */
export function* sprintSums(
  velocity: WeightedPoints,
  capPoints: (sprints: number) => number,
): Generator<SprintSum, never> {
  const unitPoints = greatestCommonStep(velocity.points);
  const steps = Array.from(velocity.points, (points) => Math.round(points / unitPoints));
  let chances = Float64Array.of(1);
  let beyondChance = 0;
  let lowest = 0;
  let highest = 0;
  for (let sprints = 1; ; sprints += 1) {
    const cap = Math.floor(capPoints(sprints) / unitPoints);
    const reach = Math.min(cap, highest + (steps.at(-1) as number));
    const next = new Float64Array(reach + 1);
    for (const [i, step] of steps.entries()) {
      const chance = velocity.chances[i] as number;
      const within = Math.min(highest, cap - step);
      for (let s = lowest; s <= within; s += 1)
        next[s + step] = (next[s + step] as number) + chance * (chances[s] as number);
      for (let s = Math.max(lowest, within + 1); s <= highest; s += 1)
        beyondChance += chance * (chances[s] as number);
    }
    lowest += steps[0] as number;
    highest = reach;
    chances = next;
    yield { sprints, chances, unitPoints, beyondChance };
  }
}

function greatestCommonStep(points: Float64Array): number {
  const divisor = points.reduce((a, b) => commonDivisor(a, Math.round(b * STEPS_PER_POINT)), 0);
  return divisor / STEPS_PER_POINT;
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}
