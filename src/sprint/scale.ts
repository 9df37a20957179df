/**
 * A planning scale has gaps, so a size that isn't on the scale must not be held against the team.
 * This module says which value of the scale a size lies nearest to.
 */
import { isPoints, MAX_POINTS } from './points.ts';

/** Ascending sizes in points, at least one, all above 0 or the first equal to 0. */
export type Scale = readonly number[];

/** The scale of a team that named none; it goes on as the Fibonacci sequence (34, 55, …). */
export const DEFAULT_SCALE: Scale = [1, 2, 3, 5, 8, 13, 21];

const MOST_SIZES = 30;

export type ScaleProblem =
  | { readonly code: 'scale-empty' }
  | { readonly code: 'scale-too-long'; readonly most: number }
  | { readonly code: 'scale-no-size'; readonly size: number; readonly most: number }
  | { readonly code: 'scale-not-rising'; readonly size: number; readonly before: number }
  | { readonly code: 'scale-only-zero' };

/** The reason why a list of numbers is no scale, or undefined when it is one. */
export function whyNotAScale(values: readonly number[]): ScaleProblem | undefined {
  if (values.length === 0) return { code: 'scale-empty' };
  if (values.length > MOST_SIZES) return { code: 'scale-too-long', most: MOST_SIZES };
  const bad = values.find((value) => !isPoints(value));
  if (bad !== undefined) return { code: 'scale-no-size', size: bad, most: MAX_POINTS };
  for (const [i, value] of values.entries()) {
    const before = values[i - 1];
    if (before !== undefined && value <= before) {
      return { code: 'scale-not-rising', size: value, before };
    }
  }
  if (values.at(-1) === 0) return { code: 'scale-only-zero' };
  return undefined;
}

function isDefaultScale(scale: Scale): boolean {
  if (scale === DEFAULT_SCALE) return true;
  return scale.length === DEFAULT_SCALE.length && scale.every((size, i) => size === DEFAULT_SCALE[i]);
}

/** The default scale, as far as it was needed yet. */
const continued = [...DEFAULT_SCALE];

/** The default scale, continued until it passes `sizePoints`, or further. */
function continuedPast(sizePoints: number): Scale {
  while ((continued.at(-1) as number) <= sizePoints) {
    continued.push((continued.at(-1) as number) + (continued.at(-2) as number));
  }
  return continued;
}

/**
 * The value of the scale that a size lies nearest to; a tie goes up.
 *
 * On the default scale 4 snaps to 5, so 5 covers 4 to 6 and 8 covers 7 to 10. The default scale has no
 * end. A scale of the team's own ends with the band of its largest value, which reaches as far above
 * that value as it does below, both ends included; a lone value's band reaches down to 0.
 * Source: common practice, no published source.
 *
 * @param sizePoints a size in points, 0 or more; sums of many answers may exceed 999.5.
 * @returns a value of the scale, or undefined when the size lies beyond the band of the largest value.
 * @example snap(4, DEFAULT_SCALE) === 5
 */
export function snap(sizePoints: number, scale: Scale): number | undefined {
  const sizes = isDefaultScale(scale) ? continuedPast(sizePoints) : scale;
  const largest = sizes.at(-1) as number;
  if (sizePoints > largest) {
    const reach = sizes.length > 1 ? (largest - (sizes.at(-2) as number)) / 2 : largest;
    return sizePoints <= largest + reach ? largest : undefined;
  }
  let above = 0;
  while ((sizes[above] as number) < sizePoints) above += 1;
  const upper = sizes[above] as number;
  const lower = sizes[above - 1];
  return lower !== undefined && sizePoints - lower < upper - sizePoints ? lower : upper;
}

/** Whether the scale can say this estimate. */
export function isOnScale(estimatePoints: number, scale: Scale): boolean {
  return (isDefaultScale(scale) ? continuedPast(estimatePoints) : scale).includes(estimatePoints);
}
