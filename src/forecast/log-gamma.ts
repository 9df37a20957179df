const STIRLING_FROM = 15;
const HALF_LOG_2_PI = 0.5 * Math.log(2 * Math.PI);

/**
 * Natural logarithm of the gamma function, for x > 0, to about 14 digits.
 *
 * Formula: ln Γ(x) = ln Γ(x + n) − ln(x·(x+1)…(x+n−1)), with n large enough for Stirling's series
 * (x − ½)·ln x − x + ½·ln 2π + 1/(12x) − 1/(360x³) + 1/(1260x⁵) − 1/(1680x⁷) + 1/(1188x⁹).
 * Source: Abramowitz and Stegun 6.1.41.
 *
 * @throws RangeError unless x > 0.
 * @example Math.round(Math.exp(logGamma(5))) === 24
 */
export function logGamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`A number above 0, not ${x}.`);
  let product = 1;
  let far = x;
  for (; far < STIRLING_FROM; far += 1) product *= far;
  return (far - 0.5) * Math.log(far) - far + HALF_LOG_2_PI + stirlingSeries(far) - Math.log(product);
}

function stirlingSeries(x: number): number {
  const inverse = 1 / x;
  const square = inverse * inverse;
  return (
    inverse * (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square * (1 / 1680 - square * (1 / 1188)))))
  );
}

/**
 * What ln Γ(x) has beyond (x − ½)·ln x − x + ½·ln 2π: small for large x, so that differences of large logarithms can be
 * taken without losing digits.
 *
 * @example Math.round(12e6 * stirlingRest(1e6)) === 1
 */
export function stirlingRest(x: number): number {
  return x >= STIRLING_FROM ? stirlingSeries(x) : logGamma(x) - ((x - 0.5) * Math.log(x) - x + HALF_LOG_2_PI);
}
