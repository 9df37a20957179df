/**
 * Moves labels that stand in one column apart, so that none touches another. Pure.
 *
 * `wanted` are the heights where their middles would like to be; the result keeps their order from top to bottom,
 * at least `gapPx` between neighbours, and within `top` and `bottom` as long as all of them fit there.
 */
export function spreadLabels(
  wanted: readonly number[],
  gapPx: number,
  { top, bottom }: { readonly top: number; readonly bottom: number },
): number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => (wanted[a] as number) - (wanted[b] as number));
  const heights = order.map((index) => Math.min(Math.max(wanted[index] as number, top), bottom));
  // Down from the top, then up from the bottom: the second pass only undoes what the first pushed too far.
  for (let i = 1; i < heights.length; i += 1) {
    heights[i] = Math.max(heights[i] as number, (heights[i - 1] as number) + gapPx);
  }
  for (let i = heights.length - 1, most = bottom; i >= 0; i -= 1, most -= gapPx) {
    const next = heights[i + 1];
    heights[i] = Math.min(heights[i] as number, next === undefined ? most : next - gapPx);
  }
  const spread: number[] = [];
  order.forEach((index, i) => {
    spread[index] = heights[i] as number;
  });
  return spread;
}
