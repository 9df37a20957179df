export interface QuadraturePoint {
  readonly at: number;
  readonly weight: number;
}

/** Newton's steps; from the starting values below five reach the last digit. */
const STEPS = 8;

/**
 * The places and weights with which a sum is the integral from 0 to 1 of any polynomial up to the degree 2n − 1.
 *
 * Formula: the roots x of Legendre's polynomial Pₙ, with the weight 2 ÷ ((1 − x²)·Pₙ′(x)²), moved from [−1, 1] to [0, 1].
 * Units: none. n from 1.
 * How it misleads: not at all for polynomials; a function with a corner asks for more places.
 * Source: Abramowitz and Stegun, "Handbook of mathematical functions", 25.4.29 (memory).
 *
 * @example gaussLegendre(1)[0]?.at === 0.5
 */
export function gaussLegendre(n: number): QuadraturePoint[] {
  return Array.from({ length: n }, (_, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    for (let step = 0; step < STEPS; step += 1) {
      const { value, slope } = legendre(n, x);
      x -= value / slope;
    }
    const { slope } = legendre(n, x);
    return { at: (1 - x) / 2, weight: 1 / ((1 - x * x) * slope * slope) };
  });
}

function legendre(n: number, x: number): { value: number; slope: number } {
  let [before, value] = [1, x];
  for (let k = 2; k <= n; k += 1) {
    [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
  }
  return { value, slope: (n * (x * value - before)) / (x * x - 1) };
}
