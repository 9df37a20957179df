const GOLDEN = (Math.sqrt(5) - 1) / 2;
const STEPS = 60;

/**
 * Where a function with one peak is greatest between two ends: golden-section search, to about 8 digits, which is
 * as near as function values can tell.
 *
 * @example Math.round(greatest((x) => -((x - 2) ** 2), 0, 5) * 1000) === 2000
 */
export function greatest(height: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let [atLeft, atRight] = [height(left), height(right)];
  for (let i = 0; i < STEPS && high - low > 1e-9 * (Math.abs(low) + Math.abs(high)); i += 1) {
    if (atLeft < atRight) {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = height(right);
    } else {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = height(left);
    }
  }
  return (low + high) / 2;
}
