/** How often cards of each size turned out to need work that nobody had foreseen. It warns; it forbids nothing. */
import { type Ratio, type UndefinedValue, undefinedBecause } from '../sprint/undefined-value.ts';
import { type BetaParameters, betaQuantile } from './beta-distribution.ts';
import { gradedOdds } from './graded-odds.ts';
import type { Interval } from './points-distribution.ts';
import { median } from './quantile.ts';
import { wilsonInterval } from './wilson-interval.ts';

/** A card of a closed sprint that was not dropped. */
export interface ClosedCard {
  readonly estimatePoints: number;
  readonly surprisePoints: number;
  /** How much of its work was done at the sprint's end: 1 when finished, 0 when never begun. Undefined: not kept then. */
  readonly doneShare?: number | undefined;
}

/** Below so many cards even the Wilson interval of a share near one half is wider than 50 percentage points. */
export const LITTLE_HISTORY_CARDS = 12;

/** The belief is wider than what it is about: its middle 90% hold the truth in 95 of 100 cases of the tests' worlds. */
const BELIEF_TAIL = 0.05;

/** The odds for one estimate. Shares: 1 means 100%; intervals hold the truth in 95% of cases. */
export interface SurpriseOdds {
  readonly estimatePoints: number;
  /** That were begun. */
  readonly cards: number;
  readonly withSurprise: number;
  /** Whether there are so few cards of this size that it borrows from the others. */
  readonly borrows: boolean;
  /** Larger than every size with a card that was begun. */
  readonly isLargerThanAny: boolean;
  readonly likelyShare: number;
  readonly likelyInterval: Interval;
  /** Of the cards that held surprise. Undefined when none did. */
  readonly medianSurprisePoints: Ratio;
  /** Undefined when fewer than six cards held surprise. */
  readonly medianSurpriseInterval: Interval | UndefinedValue;
}

/** The odds of every size, ascending. */
export interface SurpriseOddsBySize {
  readonly sizes: readonly SurpriseOdds[];
  /** That were begun. */
  readonly cards: number;
  readonly withSurprise: number;
  /** Of them, still open at their sprint's end and without surprise so far. */
  readonly openCards: number;
}

/**
 * For each estimate: how many cards of closed sprints held surprise work, what share that is and how sure it is,
 * and how much surprise there was when there was one.
 *
 * A card held surprise when its surprise work ended above 0. Cards that were never begun are left out: nothing could
 * turn up in them. A card still open, without surprise so far, counts by the share of its work that was done. The share
 * of a size with fewer than 12 cards is the mean of the belief in which the odds may go with size (`gradedOdds`).
 * Undefined without a card that was begun.
 * How it misleads: it counts what people called surprise. It takes the past for the future, though a team that
 * splits its big cards changes both. And big cards are few, so theirs is the widest interval.
 * Source: intervals as in `wilsonInterval`; 12 is ours.
 *
 * @param askedEstimates sizes to include even if no card had them, e.g. those about to be committed to.
 * @example surpriseOdds([]).undefined.code === 'no-closed-card'
 */
export function surpriseOdds(
  cards: readonly ClosedCard[],
  askedEstimates: readonly number[] = [],
): SurpriseOddsBySize | UndefinedValue {
  const begun = cards.filter((card) => holdsSurprise(card) || card.doneShare !== 0);
  if (begun.length === 0) return undefinedBecause('no-closed-card');
  const bySize = Map.groupBy(begun, (card) => card.estimatePoints);
  const estimates = [...new Set([...bySize.keys(), ...askedEstimates])].toSorted((a, b) => a - b);
  const groups = [...bySize].map(([estimatePoints, group]) => ({ estimatePoints, ...countOf(group) }));
  const beliefs = gradedOdds(groups, estimates);
  const largest = Math.max(...bySize.keys());
  return {
    sizes: estimates.map((estimate, i) => ({
      ...oddsOf(estimate, bySize.get(estimate) ?? [], beliefs[i] as BetaParameters),
      isLargerThanAny: estimate > largest,
    })),
    cards: begun.length,
    withSurprise: begun.filter(holdsSurprise).length,
    openCards: begun.filter((card) => !holdsSurprise(card) && (card.doneShare ?? 1) < 1).length,
  };
}

function holdsSurprise({ surprisePoints }: ClosedCard): boolean {
  return surprisePoints > 0;
}

function countOf(cards: readonly ClosedCard[]): { trials: number; successes: number } {
  const trials = cards.reduce((sum, card) => sum + (holdsSurprise(card) ? 1 : (card.doneShare ?? 1)), 0);
  return { trials, successes: cards.filter(holdsSurprise).length };
}

function oddsOf(
  estimatePoints: number,
  cards: readonly ClosedCard[],
  belief: BetaParameters,
): Omit<SurpriseOdds, 'isLargerThanAny'> {
  const surprises = cards.filter(holdsSurprise).map((card) => card.surprisePoints);
  const { trials, successes } = countOf(cards);
  const borrows = trials < LITTLE_HISTORY_CARDS;
  return {
    estimatePoints,
    cards: cards.length,
    withSurprise: successes,
    borrows,
    likelyShare: borrows ? belief.alpha / (belief.alpha + belief.beta) : successes / trials,
    likelyInterval: borrows
      ? { low: betaQuantile(BELIEF_TAIL, belief), high: betaQuantile(1 - BELIEF_TAIL, belief) }
      : (wilsonInterval(successes, trials) as Interval),
    medianSurprisePoints:
      surprises.length === 0
        ? undefinedBecause(cards.length === 0 ? 'no-card-of-size' : 'no-surprise-of-size', { estimatePoints })
        : median(surprises),
    medianSurpriseInterval: medianInterval(surprises),
  };
}

/** With five values even the least and the greatest hold the median in only 93.75% of cases. */
const LEAST_VALUES = 6;

/**
 * Between which of the values the true median lies, in at least 95% of cases, whatever the distribution.
 *
 * Formula: from the r-th smallest to the r-th greatest value, with the largest r for which a fair coin thrown n
 * times shows fewer than r heads with a chance of at most 2.5%.
 * Units: those of the values. Undefined below six values, where no two of them are far enough apart.
 * How it misleads: it takes the values for independent and from one unchanging team.
 * Source: order statistics (the sign test turned round).
 *
 * @example medianInterval([27, 34, 35, 38, 39, 40, 40, 41, 45]).low === 34
 */
export function medianInterval(values: readonly number[]): Interval | UndefinedValue {
  const n = values.length;
  if (n < LEAST_VALUES) {
    return undefinedBecause('few-values', { needed: LEAST_VALUES, known: n });
  }
  const sorted = values.toSorted((a, b) => a - b);
  let rank = 0;
  // Logarithms, for 2^n leaves the range of numbers at about a thousand values.
  let logChance = -n * Math.LN2;
  let tail = Math.exp(logChance);
  while (tail <= 0.025) {
    rank += 1;
    logChance += Math.log((n - rank + 1) / rank);
    tail += Math.exp(logChance);
  }
  return { low: sorted[rank - 1] as number, high: sorted[n - rank] as number };
}
