/** How often cards of each size turned out to need work that nobody had foreseen. It warns; it forbids nothing. */
import { type Ratio, ratioOf, type UndefinedValue, undefinedBecause } from '../sprint/undefined-value.ts';
import { betaBinomialFit } from './beta-binomial-fit.ts';
import { type BetaParameters, betaQuantile } from './beta-distribution.ts';
import type { Interval } from './points-distribution.ts';
import { median } from './quantile.ts';
import { wilsonInterval } from './wilson-interval.ts';

/** A card of a closed sprint that was not dropped. */
export interface ClosedCard {
  readonly estimatePoints: number;
  readonly surprisePoints: number;
}

/** Below so many cards even the Wilson interval of a share near one half is wider than 50 percentage points. */
export const LITTLE_HISTORY_CARDS = 12;

/** The odds for one estimate. Shares: 1 means 100%; intervals hold the truth in 95% of cases. */
export interface SurpriseOdds {
  readonly estimatePoints: number;
  readonly cards: number;
  readonly withSurprise: number;
  /** Of this size's own cards. Undefined when there was none. */
  readonly ownShare: Ratio;
  /** Wilson's, of this size's own cards. Undefined when there was none. */
  readonly ownInterval: Interval | UndefinedValue;
  /** Drawn towards the other sizes, the more the fewer cards this one has. */
  readonly shrunkShare: number;
  /** Of the share drawn towards the others (beta posterior, α and β taken as known). */
  readonly shrunkInterval: Interval;
  /** Whether there are so few cards of this size that the share to show is the shrunk one. */
  readonly borrows: boolean;
  /** How much of the shrunk share comes from the fit over all sizes rather than from this one: 0 to 1. */
  readonly borrowedShare: number;
  /** The one to show: `shrunkShare` when the size borrows, else `ownShare`. */
  readonly likelyShare: number;
  readonly likelyInterval: Interval;
  /** Of the cards that held surprise. Undefined when none did. */
  readonly medianSurprisePoints: Ratio;
  /** Undefined when fewer than six cards held surprise. */
  readonly medianSurpriseInterval: Interval | UndefinedValue;
}

/** The odds of every size, ascending, and what they borrow from. */
export interface SurpriseOddsBySize {
  readonly sizes: readonly SurpriseOdds[];
  readonly cards: number;
  readonly withSurprise: number;
  /** The belief about a size of which nothing is known. */
  readonly prior: BetaParameters;
}

function oddsOf(estimatePoints: number, cards: readonly ClosedCard[], prior: BetaParameters): SurpriseOdds {
  const surprises = cards.map((card) => card.surprisePoints).filter((points) => points > 0);
  const own = { trials: cards.length, successes: surprises.length };
  const strength = prior.alpha + prior.beta;
  const posterior: BetaParameters = {
    alpha: prior.alpha + own.successes,
    beta: prior.beta + own.trials - own.successes,
  };
  const ownShare = ratioOf(own.successes, own.trials, 'no-card-of-size', { estimatePoints });
  const ownInterval =
    own.trials === 0
      ? undefinedBecause('no-card-of-size', { estimatePoints })
      : wilsonInterval(own.successes, own.trials);
  const shrunkShare = posterior.alpha / (posterior.alpha + posterior.beta);
  const shrunkInterval = { low: betaQuantile(0.025, posterior), high: betaQuantile(0.975, posterior) };
  const borrows = own.trials < LITTLE_HISTORY_CARDS;
  return {
    estimatePoints,
    cards: own.trials,
    withSurprise: own.successes,
    ownShare,
    ownInterval,
    shrunkShare,
    shrunkInterval,
    borrows,
    borrowedShare: strength / (strength + own.trials),
    likelyShare: borrows ? shrunkShare : (ownShare as number),
    likelyInterval: borrows ? shrunkInterval : (ownInterval as Interval),
    medianSurprisePoints:
      surprises.length === 0
        ? undefinedBecause(own.trials === 0 ? 'no-card-of-size' : 'no-surprise-of-size', { estimatePoints })
        : median(surprises),
    medianSurpriseInterval: medianInterval(surprises),
  };
}

/**
 * For each estimate: how many cards of closed sprints held surprise work, what share that is and how sure it is,
 * and how much surprise there was when there was one.
 *
 * A card held surprise when its surprise work ended above 0. The share of a size with fewer than 12 cards is
 * shrunk: (α + cards with surprise) ÷ (α + β + cards), with α and β fitted over all sizes (`betaBinomialFit`).
 * Undefined without a closed card.
 * How it misleads: it counts what people called surprise. It takes the past for the future, though a team that
 * splits its big cards changes both. And big cards are few, so theirs is the widest interval.
 * Source: intervals as in `wilsonInterval`; shrinking as in any empirical Bayes estimate; 12 is ours.
 *
 * @param askedEstimates sizes to include even if no card had them, e.g. those about to be committed to.
 * @example surpriseOdds([]).undefined.code === 'no-closed-card'
 */
export function surpriseOdds(
  cards: readonly ClosedCard[],
  askedEstimates: readonly number[] = [],
): SurpriseOddsBySize | UndefinedValue {
  if (cards.length === 0) return undefinedBecause('no-closed-card');
  const bySize = Map.groupBy(cards, (card) => card.estimatePoints);
  const holds = (card: ClosedCard): boolean => card.surprisePoints > 0;
  const prior = betaBinomialFit(
    [...bySize.values()].map((group) => ({ trials: group.length, successes: group.filter(holds).length })),
  ) as BetaParameters;
  const estimates = [...new Set([...bySize.keys(), ...askedEstimates])].toSorted((a, b) => a - b);
  return {
    sizes: estimates.map((estimate) => oddsOf(estimate, bySize.get(estimate) ?? [], prior)),
    cards: cards.length,
    withSurprise: cards.filter(holds).length,
    prior,
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
