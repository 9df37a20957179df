/** Chances and other estimates in whole percents: decimals would promise what nobody knows. */

/** `40%`, `-3%`, never `-0%`; 1 means 100%. */
export function wholePercent(share: number): string {
  return `${wholeNumber(share)}%`;
}

/** `17 to 69%`; `25%` where both ends are the same. */
export function wholePercentSpan({ low, high }: { readonly low: number; readonly high: number }): string {
  const [from, to] = [wholeNumber(low), wholeNumber(high)];
  return from === to ? `${to}%` : `${from} to ${to}%`;
}

function wholeNumber(share: number): string {
  const percent = Math.round(Math.abs(share) * 100);
  return share < 0 && percent > 0 ? `-${percent}` : `${percent}`;
}
