/** Whether a card fits between now and the sprint's end. It gives a chance; the checklist beside it is not its job. */
import { type UndefinedValue, undefinedBecause } from '../sprint/undefined-value.ts';
import type { Interval } from './points-distribution.ts';
import type { WorkChance } from './whole-cards.ts';
import { wilsonInterval } from './wilson-interval.ts';

/** Fewer past cards than this say nothing. */
export const LEAST_PULLED_IN_CARDS = 5;
/** How much more or less work a working day two cards may have to be comparable. */
const COMPARABLE_FACTOR = 2;

export interface PullInCard {
  readonly estimatePoints: number;
  /** Open points that come before this one, less what is underway in them. */
  readonly aheadPoints: number;
  /** The odds that it holds surprise work (0 to 1) and how much; undefined when they are not known. */
  readonly surprise: { readonly share: number; readonly points: number } | undefined;
}

export interface PullInChance {
  /** Chance (0 to 1) that the card gets finished when it waits for the open work ahead of it. */
  readonly afterOpenWork: number;
  /** Chance (0 to 1) that it gets finished when it is done first, and the open work waits. */
  readonly doneFirst: number;
}

/**
 * The chance that a card pulled in now gets finished before the sprint's end.
 *
 * Formula: P(X ≥ ahead + size), where X is how many points the team can still finish, averaged over the card
 * holding surprise work (size = estimate + surprise) and not holding any (size = estimate).
 * Units: points in, a chance from 0 to 1 out. Never rises with the estimate or with the work ahead.
 * How it misleads: it takes the team for one queue. Where the card's owner is free and the others are not, the
 * truth lies nearer to `doneFirst`. And what is finished first leaves the open work that much less time.
 * Source: ours.
 *
 * @param atLeast the chance that the team can still finish so many points of work (`stillFinishable`)
 * @example pullInChance({ estimatePoints: 3, aheadPoints: 0, surprise: undefined }, (points) => Number(points <= 5)).doneFirst === 1
 */
export function pullInChance(card: PullInCard, atLeast: WorkChance): PullInChance {
  const finished = (aheadPoints: number): number => {
    const plain = atLeast(aheadPoints + card.estimatePoints);
    if (card.surprise === undefined) return plain;
    const { share, points } = card.surprise;
    return (1 - share) * plain + share * atLeast(aheadPoints + card.estimatePoints + points);
  };
  return { afterOpenWork: finished(card.aheadPoints), doneFirst: finished(0) };
}

/** A card that was pulled into a closed sprint and not dropped. */
export interface PulledInCard {
  readonly estimatePoints: number;
  /** Of the sprint, when it came in; the day itself included. */
  readonly workingDaysLeft: number;
  readonly finished: boolean;
}

export interface PullInRecord {
  readonly finished: number;
  readonly cards: number;
  /** finished ÷ cards, 0 to 1. */
  readonly share: number;
  /** Wilson's, 95%. */
  readonly interval: Interval;
  /** Whether the cards are only those with about as much work a day, or all that were ever pulled in. */
  readonly comparable: boolean;
}

/**
 * How often such cards were finished in the past, for when there is no projection to go by.
 *
 * Formula: finished ÷ pulled in, of the cards with half to twice as many points a working day left; of all cards
 * where fewer than five compare.
 * Undefined below five pulled-in cards, and when no working day is left.
 * How it misleads: it doesn't see how full this sprint is.
 * Source: ours; the factor of 2 and the five cards are common sense, no published source.
 *
 * @example pullInRecord([], 3, 4).undefined.code === 'few-pulled-in'
 */
export function pullInRecord(
  past: readonly PulledInCard[],
  estimatePoints: number,
  workingDaysLeft: number,
): PullInRecord | UndefinedValue {
  if (workingDaysLeft <= 0) {
    return undefinedBecause('no-day-for-card', { estimatePoints });
  }
  if (past.length < LEAST_PULLED_IN_CARDS) {
    return undefinedBecause('few-pulled-in', { needed: LEAST_PULLED_IN_CARDS, known: past.length });
  }
  const pace = estimatePoints / workingDaysLeft;
  const alike = past.filter((card) => {
    const its = card.estimatePoints / card.workingDaysLeft;
    return its <= pace * COMPARABLE_FACTOR && its * COMPARABLE_FACTOR >= pace;
  });
  const comparable = alike.length >= LEAST_PULLED_IN_CARDS;
  const cards = comparable ? alike : past;
  const finished = cards.filter((card) => card.finished).length;
  return {
    finished,
    cards: cards.length,
    share: finished / cards.length,
    interval: wilsonInterval(finished, cards.length) as Interval,
    comparable,
  };
}
