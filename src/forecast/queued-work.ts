/** Several bodies of work that one team does in turn: how much must be finished until the last of them is. */

export interface QueuedWork {
  readonly points: number;
  /** Points by which it grows with each sprint until it is finished; 0 for work that is settled. */
  readonly growthPoints: number;
  /** Whether it grows from the first sprint on; else only while it is worked on. */
  readonly growsWaiting: boolean;
}

/** Halvings of a span; more change no digit of a date. */
const HALVINGS = 50;

/**
 * How many sprints several bodies of work take, one after the other, at a steady pace.
 *
 * Formula: T₀ = 0, Tₖ = Tₖ₋₁ + (bₖ + wₖ·gₖ·Tₖ₋₁) ÷ (v − gₖ) with b the points, g the growth a sprint, w = 1 for work that
 * grows while it waits, else 0, and v the pace.
 * Units: sprints. Infinite where a body grows as fast as it is worked off.
 * How it misleads: whoever waits for somebody else starts the next body before.
 * Source: arithmetic.
 *
 * @param works in turn
 * @example sprintsInTurn([{ points: 20, growthPoints: 0, growsWaiting: true }, { points: 10, growthPoints: 5, growsWaiting: true }], 10) === 6
 */
export function sprintsInTurn(works: readonly QueuedWork[], pointsPerSprint: number): number {
  let sprints = 0;
  for (const { points, growthPoints, growsWaiting } of works) {
    if (pointsPerSprint <= growthPoints) return Number.POSITIVE_INFINITY;
    const waiting = growsWaiting ? growthPoints * sprints : 0;
    sprints += (points + waiting) / (pointsPerSprint - growthPoints);
  }
  return sprints;
}

/**
 * How many points must be finished within so many sprints so that the last of several bodies of work is.
 *
 * Formula: v·k with v the pace at which `sprintsInTurn` is k. Of one body that is b + k·g, and of several that don't
 * grow the sum of their points.
 * Units: points. 0 without work.
 * How it misleads: the sprints before the last are taken to have gone at the same pace, which says how long the bodies
 * before grew. Where they went faster, less is needed.
 * Source: arithmetic, checked against simulated sprints.
 *
 * @param works in turn
 * @param sprints above 0
 * @example pointsNeeded([{ points: 20, growthPoints: 0, growsWaiting: true }, { points: 10, growthPoints: 5, growsWaiting: true }], 6) === 60
 */
export function pointsNeeded(works: readonly QueuedWork[], sprints: number): number {
  const all = works.reduce((sum, { points }) => sum + points, 0);
  const growth = works.reduce((sum, { growthPoints }) => sum + growthPoints, 0);
  const most = all + growth * sprints;
  if (works.length <= 1 || growth === 0) return most;
  // At the greatest growth it takes for ever; were all to grow to the end, it would take as long at the most.
  let [low, high] = [Math.max(...works.map(({ growthPoints }) => growthPoints)), most / sprints];
  for (let i = 0; i < HALVINGS; i += 1) {
    const pace = (low + high) / 2;
    [low, high] = sprintsInTurn(works, pace) > sprints ? [pace, high] : [low, pace];
  }
  return high * sprints;
}
