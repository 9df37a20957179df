import { wholePercent } from '../../sprint/whole-percent.ts';

/** `62%`; a chance that is no certainty is never told as one. @param chance from 0 to 1 */
export function chanceWords(chance: number): string {
  if (chance > 0 && Math.round(chance * 100) === 0) return 'less than 1%';
  if (chance < 1 && Math.round(chance * 100) === 100) return 'more than 99%';
  return wholePercent(chance);
}
