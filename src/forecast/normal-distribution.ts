/** The standard normal distribution, to about 15 digits. Knows nothing of sprints. */

const ROOT_2_PI = Math.sqrt(2 * Math.PI);
/** From here on the series would need too many terms, and the continued fraction few. */
const TAIL_FROM = 3;
const TAIL_DEPTH = 80;
const MOST_STEPS = 200;

/** Height of the bell curve at z. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / ROOT_2_PI;
}

/** The chance of a value above z, for z of `TAIL_FROM` or more: Laplace's continued fraction. */
function farTail(z: number): number {
  if (z === Number.POSITIVE_INFINITY) return 0;
  let below = z;
  for (let k = TAIL_DEPTH; k >= 1; k -= 1) below = z + k / below;
  return normalDensity(z) / below;
}

/**
 * The chance of a standard normal value of at most z.
 *
 * Formula: ½ + φ(z)·(z + z³/3 + z⁵/(3·5) + …) in the middle, φ(z)/(z + 1/(z + 2/(z + …))) in the tails, which
 * keep their relative precision: a likelihood takes their logarithm.
 * Source: both expansions are Laplace's; Abramowitz and Stegun 26.2.11 and 26.2.14.
 *
 * @example normalCdf(0) === 0.5
 */
export function normalCdf(z: number): number {
  if (z >= TAIL_FROM) return 1 - farTail(z);
  if (z <= -TAIL_FROM) return farTail(-z);
  let term = z;
  let sum = z;
  for (let k = 3; Math.abs(term) > Number.EPSILON * Math.abs(sum) * 0.1; k += 2) {
    term *= (z * z) / k;
    sum += term;
  }
  return 0.5 + normalDensity(z) * sum;
}

/**
 * The value that a standard normal one falls short of with this chance: the inverse of `normalCdf`.
 *
 * Method: Newton's steps from 0 outwards on the nearer tail, which is convex there, so that no step overshoots.
 *
 * @throws RangeError unless 0 < chance < 1.
 * @example normalQuantile(0.5) === 0
 */
export function normalQuantile(chance: number): number {
  if (!(chance > 0 && chance < 1)) throw new RangeError(`A chance between 0 and 1, not ${chance}.`);
  if (chance === 0.5) return 0;
  const tail = Math.min(chance, 1 - chance);
  let z = 0;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const change = (normalCdf(-z) - tail) / normalDensity(z);
    z += change;
    if (Math.abs(change) <= 1e-15 * z) break;
  }
  return chance < 0.5 ? -z : z;
}
