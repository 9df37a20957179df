/** Chances that must not rise with the commitment, from ones that may: what is likely for more is no less likely for less. */

/** A chance as it was found, and how much speaks for it. */
export interface FoundChance {
  readonly chance: number;
  readonly weight: number;
}

/** Half points as long as a hundred of them lead to where the past says something; beyond, whole points … */
const STEPS = { fine: 0.5, finest: 100, whole: 1 };
/** … or longer ones: so many even steps at the most. From there on each is a quarter longer. */
const EVEN_STEPS = 300;
const LATER_STEPS = 20;
const GROWTH = 1.25;

/**
 * The falling chances that are nearest to those that were found.
 *
 * Formula: isotonic regression, that is the falling sequence with the least Σ weight·(chance − found)², over commitments in
 * half points (whole ones where the past reaches beyond 50 points, longer ones beyond 300); one in between has the chance of the next step.
 * Units: points in, a chance from 0 to 1 out. The found ones are asked for once, when the first chance is.
 * Source: pooling of adjacent violators; Ayer and others, "An empirical distribution function for sampling with incomplete
 * information", 1955 (memory).
 *
 * @param reachPoints how far the past says something, above 0
 * @example fallingChances((points) => ({ chance: 1 / (1 + points), weight: 1 }), 10)(1) === 0.5
 */
export function fallingChances(
  find: (points: number) => FoundChance,
  reachPoints: number,
): (points: number) => number {
  const step =
    reachPoints <= STEPS.fine * STEPS.finest
      ? STEPS.fine
      : STEPS.whole * Math.ceil(reachPoints / STEPS.whole / EVEN_STEPS);
  const even = Math.ceil(reachPoints / step);
  const places = Array.from({ length: even + LATER_STEPS }, (_, i) =>
    i < even ? (i + 1) * step : even * step * GROWTH ** (i + 1 - even),
  );
  let chances: readonly number[] | undefined;
  return (points) => {
    chances ??= falling(places.map(find));
    const next = places.findIndex((place) => place >= points);
    return chances.at(next) as number;
  };
}

/** Neighbours that rise are given the mean of both, until none rises. */
function falling(found: readonly FoundChance[]): number[] {
  const pools: { sum: number; weight: number; count: number }[] = [];
  for (const { chance, weight } of found) {
    let pool = { sum: chance * weight, weight, count: 1 };
    for (let before = pools.at(-1); before && isAbove(pool, before); before = pools.at(-1)) {
      pools.pop();
      pool = {
        sum: pool.sum + before.sum,
        weight: pool.weight + before.weight,
        count: pool.count + before.count,
      };
    }
    pools.push(pool);
  }
  return pools.flatMap(({ sum, weight, count }) => Array.from({ length: count }, () => sum / weight));
}

function isAbove(
  one: { readonly sum: number; readonly weight: number },
  other: { readonly sum: number; readonly weight: number },
): boolean {
  return one.sum / one.weight > other.sum / other.weight;
}
