/** Chooses where an axis of points ends and where its grid lines stand. Pure. */

export interface PointsAxis {
  readonly topPoints: number;
  readonly stepPoints: number;
}

const mostSteps = 5;

/** The first round step (1, 2 or 5 times a power of ten, at least 1) that needs at most five grid lines. */
export function pointsAxis(highestPoints: number): PointsAxis {
  // An axis that ends at nothing cannot be drawn; two points keep an empty sprint readable.
  const highest = Math.max(highestPoints, 2);
  let stepPoints = 1;
  for (let power = 1; highest / stepPoints > mostSteps; power *= 10) {
    for (const factor of [1, 2, 5]) {
      stepPoints = factor * power;
      if (highest / stepPoints <= mostSteps) break;
    }
  }
  return { topPoints: Math.ceil(highest / stepPoints) * stepPoints, stepPoints };
}
