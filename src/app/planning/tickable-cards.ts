/** Which cards of a plan can be left out in its preview, and what is left then. */
import { createHash } from 'node:crypto';
import type { PlanInput } from './plan-input.ts';

/** More ticks than this nobody reads; the smaller cards of a longer plan come with the others. */
const MOST_TICKABLE = 50;

interface Sized {
  readonly number: number;
  readonly estimatePoints: number;
}

/** Those that can be left out, in the order of the plan: all of them, or of very many the largest. */
export function tickableCards<T extends Sized>(cards: readonly T[]): T[] {
  const largest = cards.toSorted((a, b) => b.estimatePoints - a.estimatePoints).slice(0, MOST_TICKABLE);
  return cards.filter((card) => largest.includes(card));
}

/** @param ticked numbers of cards; undefined: nothing was left out */
export function leftOutCards<T extends Sized>(
  cards: readonly T[],
  ticked: readonly string[] | undefined,
): T[] {
  if (ticked === undefined) return [];
  const kept = new Set(ticked);
  return tickableCards(cards).filter(({ number }) => !kept.has(String(number)));
}

/** Tells whether the plan is still the one whose cards were ticked. */
export function planFingerprint(plan: PlanInput): string {
  return createHash('sha256')
    .update(JSON.stringify(Object.entries(plan).sort()))
    .digest('hex')
    .slice(0, 16);
}
