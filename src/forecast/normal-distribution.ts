/** The standard normal distribution, to about 15 digits. Knows nothing of sprints. */

const ROOT_2_PI = Math.sqrt(2 * Math.PI);
/** From here on the series would need too many terms, and the continued fraction few. */
const TAIL_FROM = 3;
const TAIL_DEPTH = 80;
const LEAST_DEPTH = 0.5;
/** Of the tail beyond, nothing is left in binary beside 1. */
const TAIL_ENDS = 8.5;
const MOST_STEPS = 50;

/** Height of the bell curve at z. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / ROOT_2_PI;
}

/** Density ÷ the chance of a value above z, for z of `TAIL_FROM` or more: Laplace's continued fraction. */
function farHazard(z: number): number {
  let hazard = z;
  // The farther out, the sooner it has converged: by as much as the square of z has grown.
  const depth = Math.ceil(TAIL_DEPTH * Math.max(TAIL_FROM / z, LEAST_DEPTH) ** 2);
  for (let k = depth; k >= 1; k -= 1) hazard = z + k / hazard;
  return hazard;
}

/** The chance of a value above z, for z of `TAIL_FROM` or more. */
function farTail(z: number): number {
  return z === Number.POSITIVE_INFINITY ? 0 : normalDensity(z) / farHazard(z);
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
  if (z >= TAIL_FROM) return z > TAIL_ENDS ? 1 : 1 - farTail(z);
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
 * Method: Newton's steps on the logarithm of the nearer tail, which is concave: after the first no step overshoots, and
 * a far tail takes as few steps as the middle.
 *
 * @throws RangeError unless 0 < chance < 1.
 * @example normalQuantile(0.5) === 0
 */
export function normalQuantile(chance: number): number {
  if (!(chance > 0 && chance < 1)) throw new RangeError(`A chance between 0 and 1, not ${chance}.`);
  if (chance === 0.5) return 0;
  const logTail = Math.log(Math.min(chance, 1 - chance));
  let z = 0;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const { log, hazard } = tailAt(z);
    const change = (log - logTail) / hazard;
    z += change;
    if (Math.abs(change) <= 1e-15 * z) break;
  }
  return chance < 0.5 ? -z : z;
}

/** For z of 0 or more: the logarithm of the chance of a value above z, and the density ÷ that chance. */
function tailAt(z: number): { readonly log: number; readonly hazard: number } {
  if (z < TAIL_FROM) {
    const tail = normalCdf(-z);
    return { log: Math.log(tail), hazard: normalDensity(z) / tail };
  }
  const hazard = farHazard(z);
  // Not the logarithm of the density, which is 0 in binary from 38.6 on.
  return { log: -0.5 * z * z - Math.log(ROOT_2_PI * hazard), hazard };
}
