/** Percent appears only in text; this is where a share becomes text. */

/** Percent as a bare number, rounded to so many decimals, without trailing zeros. */
function percentNumber(share: number, decimals: number): string {
  const unit = 10 ** decimals;
  return String(Math.round(share * 100 * unit) / unit);
}

/**
 * A share rounded to a tenth of a percent. Beside a threshold use `against` of src/words/amounts.ts, for 79.96% would look
 * here as if it lay on 80%.
 *
 * @example formatPercent(0.8) === '80%'
 */
export function formatPercent(share: number): string {
  return `${percentNumber(share, 1)}%`;
}
