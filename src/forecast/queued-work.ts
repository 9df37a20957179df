/** Several bodies of work that one team does in turn: how much must be finished until the last of them is. */

export interface QueuedWork {
  readonly points: number;
  /** Points by which it grows with each sprint until it is finished; 0 for work that is settled. */
  readonly growthPoints: number;
  /** Whether it grows from the first sprint on; else only while it is worked on. */
  readonly growsWaiting: boolean;
}

/** Steps that come this near each other have arrived, as a share of the pace; less changes no digit of a date. */
const NEAR = 1e-9;
const MOST_STEPS = 60;

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
  return inTurn(works, pointsPerSprint).sprints;
}

/** With what a point more in each sprint changes. */
function inTurn(
  works: readonly QueuedWork[],
  pointsPerSprint: number,
): { readonly sprints: number; readonly slope: number } {
  let [sprints, slope] = [0, 0];
  for (const { points, growthPoints, growsWaiting } of works) {
    const net = pointsPerSprint - growthPoints;
    if (net <= 0) return { sprints: Number.POSITIVE_INFINITY, slope: Number.NEGATIVE_INFINITY };
    const waiting = growsWaiting ? growthPoints : 0;
    const taken = (points + waiting * sprints) / net;
    slope += (waiting * slope - taken) / net;
    sprints += taken;
  }
  return { sprints, slope };
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
  let pace = high;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const { sprints: taken, slope } = inTurn(works, pace);
    [low, high] = taken > sprints ? [pace, high] : [low, pace];
    // Newton's step on 1 ÷ sprints, which is nearly a straight line of the pace.
    const newton = pace + (taken * (1 - taken / sprints)) / slope;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - pace) <= NEAR * pace) return next * sprints;
    pace = next;
  }
  return pace * sprints;
}
