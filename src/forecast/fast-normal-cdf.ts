/** The normal distribution for loops that ask it hundreds of thousands of times. */
import { normalCdf, normalDensity } from './normal-distribution.ts';

const STEPS_PER_UNIT = 64;
/** Beyond it the chance is below 1e-15. */
const FURTHEST = 8;

const GRID = Array.from(
  { length: 2 * FURTHEST * STEPS_PER_UNIT + 1 },
  (_, i) => i / STEPS_PER_UNIT - FURTHEST,
);
const CDF = Float64Array.from(GRID, normalCdf);
const DENSITY = Float64Array.from(GRID, normalDensity);

/**
 * The chance of a standard normal value of at most z, within 1e-12 of `normalCdf`.
 *
 * Formula: Taylor's series from the nearest of the points −8, −8 + 1/64 … 8, up to the fourth power:
 * Φ(z + h) = Φ + φ·(h − z·h²/2 + (z² − 1)·h³/6 + (3z − z³)·h⁴/24).
 *
 * @example fastNormalCdf(0) === 0.5
 */
export function fastNormalCdf(z: number): number {
  if (z <= -FURTHEST) return 0;
  if (z >= FURTHEST) return 1;
  const i = Math.round((z + FURTHEST) * STEPS_PER_UNIT);
  const at = i / STEPS_PER_UNIT - FURTHEST;
  const h = z - at;
  const square = at * at;
  const series = 1 + h * (-at / 2 + h * ((square - 1) / 6 + (h * at * (3 - square)) / 24));
  return (CDF[i] as number) + (DENSITY[i] as number) * h * series;
}
