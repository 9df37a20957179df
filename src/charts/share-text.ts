/** Chances and shares in charts: whole percents, for an interval says more of their sureness than a decimal. Pure. */
import type { Interval } from '../forecast/interval.ts';

/** `40 %`, `−3 %`; 1 means 100 %. */
export function wholePercent(share: number): string {
  return `${wholeNumber(share)} %`;
}

/** As a percentage, or from 10,000 % on as so many times: `150×`. Keeps the words beside an axis short. */
export function shortShare(share: number): string {
  if (Math.abs(share) < 100) return wholePercent(share);
  return `${share < 0 ? '−' : ''}${Math.round(Math.abs(share))}×`;
}

/** `17 to 69 %`. */
export function percentSpan({ low, high }: Interval): string {
  return `${wholeNumber(low)} to ${wholeNumber(high)} %`;
}

function wholeNumber(share: number): string {
  const percent = Math.round(Math.abs(share) * 100);
  return share < 0 && percent > 0 ? `−${percent}` : `${percent}`;
}
