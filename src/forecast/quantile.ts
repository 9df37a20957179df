import { type UndefinedValue, undefinedBecause } from '../sprint/undefined-value.ts';

/** Hyndman and Fan's number for how a quantile lies between two values. */
export type QuantileType = 6 | 7 | 8;

/** Where the quantile lies in the sorted list, counted from 1. */
const POSITION: Readonly<Record<QuantileType, (n: number, share: number) => number>> = {
  6: (n, share) => (n + 1) * share,
  7: (n, share) => (n - 1) * share + 1,
  8: (n, share) => (n + 1 / 3) * share + 1 / 3,
};

/**
 * The value below which a given share of the values lies, between the two nearest by straight line.
 *
 * Type 7 (the default) is what spreadsheets and most statistics software call a quantile. Type 8 is nearly free
 * of bias for the median of any distribution, and type 6 is the one that a new value falls below with just this
 * chance; both ask for more than the list holds near its ends, where they give its least or greatest value.
 * Units: those of the values. Undefined for an empty list.
 * How it misleads: of a few values it says more about chance than about what is to come.
 * Source: Hyndman and Fan, "Sample quantiles in statistical packages", 1996.
 *
 * @throws RangeError unless 0 ≤ share ≤ 1.
 * @example quantile([1, 2, 3, 4], 0.25) === 1.75
 * @example quantile([1, 2, 3, 4], 0.25, 6) === 1.25
 */
export function quantile(
  values: readonly number[],
  share: number,
  type: QuantileType = 7,
): number | UndefinedValue {
  if (!(share >= 0 && share <= 1)) throw new RangeError(`A share from 0 to 1, not ${share}.`);
  const sorted = values.toSorted((a, b) => a - b);
  if (sorted.length === 0) return undefinedBecause('no-values');
  const position = Math.min(Math.max(POSITION[type](sorted.length, share), 1), sorted.length);
  const below = Math.floor(position);
  const low = sorted[below - 1] as number;
  const high = sorted[Math.min(below, sorted.length - 1)] as number;
  // Of two equal values nothing lies between, not even by rounding.
  return low === high ? low : low + (position - below) * (high - low);
}

/**
 * The middle value; of an even number of values, the middle of the two in the middle.
 * Undefined for an empty list.
 *
 * @example median([5, 1, 2, 8]) === 3.5
 */
export function median(values: readonly number[]): number | UndefinedValue {
  return quantile(values, 0.5);
}
