/** Chances and shares in whole percents: they are estimates, so decimals would promise what nobody knows. */
import type { Interval } from '../../forecast/interval.ts';

/** `62 %`; a chance that is no certainty is never told as one. @param chance from 0 to 1 */
export function chanceWords(chance: number): string {
  if (chance > 0 && Math.round(chance * 100) === 0) return 'less than 1 %';
  if (chance < 1 && Math.round(chance * 100) === 100) return 'more than 99 %';
  return `${wholePercent(chance)} %`;
}

/** `17 to 69 %` */
export function shareSpanWords({ low, high }: Interval): string {
  const [from, to] = [wholePercent(low), wholePercent(high)];
  return from === to ? `${from} %` : `${from} to ${to} %`;
}

/** `58`; the unit is left to the sentence. */
export function wholePercent(share: number): string {
  return String(Math.round(share * 100))
    .replace(/^-0$/, '0')
    .replace('-', '−');
}
