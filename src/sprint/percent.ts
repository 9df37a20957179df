/** Percent appears only in text; this is where a share becomes text. */

const MOST_DECIMALS = 9;

/** Percent as a bare number, rounded to so many decimals, without trailing zeros. */
function percentNumber(share: number, decimals: number): string {
  const unit = 10 ** decimals;
  return String(Math.round(share * 100 * unit) / unit);
}

function percentagePoints(distance: number, decimals: number): string {
  const text = percentNumber(distance, decimals);
  return `${text} percentage ${text === '1' ? 'point' : 'points'}`;
}

/**
 * A share rounded to a tenth of a percent. Beside a threshold use `formatAgainst`, for 79.96% would look
 * here as if it lay on 80%.
 *
 * @example formatPercent(0.8) === '80%'
 */
export function formatPercent(share: number): string {
  return `${percentNumber(share, 1)}%`;
}

/**
 * A distance between two shares, rounded to a tenth.
 *
 * @example formatPercentagePoints(0.05) === '5 percentage points'
 */
export function formatPercentagePoints(distance: number): string {
  return percentagePoints(distance, 1);
}

/** A value, the threshold beside it and the distance between them, as text. */
export interface AgainstText {
  readonly value: string;
  readonly threshold: string;
  /** Without a sign. */
  readonly distance: string;
}

/**
 * A value and its threshold with as many decimals, one at least, as it takes to tell them apart. So a
 * value never looks as if it lay on a threshold that it misses.
 *
 * @example formatAgainst(0.7996, 0.8).value === '79.96%'
 */
export function formatAgainst(value: number, threshold: number): AgainstText {
  const distance = Math.abs(value - threshold);
  let decimals = 1;
  const looksEqual = (): boolean =>
    percentNumber(value, decimals) === percentNumber(threshold, decimals) ||
    percentNumber(distance, decimals) === '0';
  while (value !== threshold && decimals < MOST_DECIMALS && looksEqual()) decimals += 1;
  return {
    value: `${percentNumber(value, decimals)}%`,
    threshold: `${percentNumber(threshold, decimals)}%`,
    distance: percentagePoints(distance, decimals),
  };
}
