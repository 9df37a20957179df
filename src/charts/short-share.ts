import { wholePercent } from '../sprint/whole-percent.ts';

/** As a percentage, or from 10,000% on as so many times: `150×`. Keeps the words beside an axis short. */
export function shortShare(share: number): string {
  if (Math.abs(share) < 100) return wholePercent(share);
  return `${share < 0 ? '-' : ''}${Math.round(Math.abs(share))}×`;
}
