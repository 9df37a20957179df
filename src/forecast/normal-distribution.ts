/** The standard normal distribution, to about 15 digits. Knows nothing of sprints. */

const ROOT_2_PI = Math.sqrt(2 * Math.PI);
const MOST_STEPS = 50;

/** A quotient of two polynomials, the coefficients of the highest powers first. */
interface Rational {
  readonly above: readonly number[];
  readonly below: readonly number[];
}

/**
 * To about 18 digits. Source: Cody, "Rational Chebyshev approximations for the error function", 1969, in the form of his
 * subroutine ANORM (ACM Algorithm 715, 1993); the coefficients are from memory, and the tests hold them against two series.
 */
const MIDDLE_UP_TO = 0.67448975;
/** (The chance − ½) ÷ z, by z². */
const MIDDLE: Rational = {
  above: [
    ...[0.06568233791820745, 2.2352520354606837, 161.02823106855587, 1067.6894854603709],
    18154.98125334356,
  ],
  below: [1, 47.202581904688245, 976.0985517377767, 10260.932208618979, 45507.78933502673],
};
const NEAR_UP_TO = Math.sqrt(32);
/** The chance beyond z ÷ exp(−z²/2), by z. */
const NEAR: Rational = {
  above: [
    ...[1.0765576773720192e-8, 0.39894151208813466, 8.883149794388377, 93.50665613217785],
    ...[597.2702763948002, 2494.5375852903726, 6848.190450536283, 11602.65143764735],
    9842.714838383978,
  ],
  below: [
    ...[1, 22.266688044328117, 235.387901782625, 1519.3775994075547, 6485.558298266761],
    ...[18615.571640885097, 34900.95272114598, 38912.00328609327, 19685.429676859992],
  ],
};
/** (1/√2π − z · the same) ÷ z⁻², by z⁻². */
const FAR: Rational = {
  above: [
    ...[0.023073441764940174, 0.215898534057957, 0.12740116116024736, 0.022235277870649807],
    ...[0.0014216191932278934, 2.9112874951168793e-5],
  ],
  below: [
    ...[1, 1.284260096144911, 0.4682382124808651, 0.06598813786892856, 0.0037823963320275824],
    7.297515550839662e-5,
  ],
};

function quotientAt({ above, below }: Rational, x: number): number {
  let [over, under] = [0, 0];
  for (let i = 0; i < above.length; i += 1) {
    over = over * x + (above[i] as number);
    under = under * x + (below[i] as number);
  }
  return over / under;
}

/** Height of the bell curve at z. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / ROOT_2_PI;
}

/** The chance of a value above z ÷ exp(−z²/2), for z above `MIDDLE_UP_TO`. */
function scaledTail(z: number): number {
  if (z <= NEAR_UP_TO) return quotientAt(NEAR, z);
  const inverse = 1 / (z * z);
  return (1 / ROOT_2_PI - inverse * quotientAt(FAR, inverse)) / z;
}

/**
 * The chance of a standard normal value of at most z. The tails keep their relative precision: a likelihood takes their
 * logarithm.
 *
 * @example normalCdf(0) === 0.5
 */
export function normalCdf(z: number): number {
  const far = Math.abs(z);
  if (far <= MIDDLE_UP_TO) return 0.5 + z * quotientAt(MIDDLE, z * z);
  const tail = Math.exp(-0.5 * z * z) * scaledTail(far);
  return z > 0 ? 1 - tail : tail;
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
  if (z <= MIDDLE_UP_TO) {
    const tail = normalCdf(-z);
    return { log: Math.log(tail), hazard: normalDensity(z) / tail };
  }
  const scaled = scaledTail(z);
  // Not the logarithm of the chance itself, which is 0 in binary from 38.5 on.
  return { log: -0.5 * z * z + Math.log(scaled), hazard: 1 / (ROOT_2_PI * scaled) };
}
