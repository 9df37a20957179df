/**
 * What several sprints finish together, by exact convolution: no simulation, no rounding of chances.
 */
import type { WeightedPoints } from './weighted-points.ts';

/** The chances of each total after some sprints, up to a cap. */
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
