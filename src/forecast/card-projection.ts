/**
 * The points that a sprint will have finished by its end, card by card: what is open, how large it is, for how long it
 * has not moved, and how much waits in one queue. It looks at cards, never at people.
 */
import type { EndedCard, OpenCard } from './card-evenings.ts';
import { type WeightedPoints, weightedPoints } from './weighted-points.ts';

/** The open cards of one past sprint at the same share of its time, and what became of them. */
export type EndedCards = readonly EndedCard[];

/** Differences that count as one step of unlikeness: 1.6 times the points, two days without a move. */
const STEP_LOG_POINTS = 0.5;
const STEP_UNMOVED_DAYS = 2;
/** Beyond so many days a card has simply been left lying. */
const MOST_UNMOVED_DAYS = 6;
/** What the model of sums says of the open work weighs as much as so many past cards that are just like this one. */
const SUMS_WEIGHT = 3;
/**
 * Cards of one sprint hang together: a bad week is bad for all of them. All log-odds are moved by the same amount, of
 * this deviation; three amounts stand for its distribution (Gauss and Hermite's rule: 0 and ±√3, weighing 2/3 and 1/6).
 */
const COMMON_DEVIATION = 0.5;
const COMMON = [
  { shift: -Math.sqrt(3) * COMMON_DEVIATION, weight: 1 / 6 },
  { shift: 0, weight: 2 / 3 },
  { shift: Math.sqrt(3) * COMMON_DEVIATION, weight: 1 / 6 },
] as const;

const HALVES_PER_POINT = 2;

/**
 * The distribution of the points finished by the end: what is finished, and whole open cards.
 *
 * Formula: each open card is finished with the share of past open cards that were, weighted by likeness
 * ((1 + ¼·Σ (difference ÷ step)²)⁻² over the logs of what is left and of what waits in its queue, the days without a move,
 * whether it was begun and whether it is blocked), to which the share of the open work that the model of sums expects is
 * added with a weight of 3 cards. Given a common shift of all log-odds the cards are independent, so that their sums
 * follow by convolution.
 * Units: points. Always defined: without past cards every card has the share of the sums.
 * How it misleads: it sees no work that is still to be pulled in, and takes every card of a kind for equally urgent.
 * Source: ours; the parts are standard.
 *
 * @param finishShare of the open work, as the model of sums expects it (0 to 1)
 * @example cardProjection([], { finishedPoints: 4, open: [], finishShare: 0.5 }).meanPoints === 4
 */
export function cardProjection(
  past: readonly EndedCards[],
  now: {
    readonly finishedPoints: number;
    readonly open: readonly OpenCard[];
    readonly finishShare: number;
  },
): WeightedPoints {
  const ended = past.flat();
  const cards = now.open.map((card) => ({
    halves: Math.round(card.estimatePoints * HALVES_PER_POINT),
    odds: oddsOf(cardChance(ended, card, now.finishShare)),
  }));
  const most = cards.reduce((sum, { halves }) => sum + halves, 0);
  const chances = new Float64Array(most + 1);
  for (const { shift, weight } of COMMON) {
    const sums = sumsOf(cards, Math.exp(shift), most);
    for (let i = 0; i <= most; i += 1) chances[i] = (chances[i] as number) + weight * (sums[i] as number);
  }
  return weightedPoints(
    chances.map((_, i) => now.finishedPoints + i / HALVES_PER_POINT),
    chances,
  );
}

/** The chance that an open card is finished by the end. */
export function cardChance(past: readonly EndedCard[], card: OpenCard, finishShare: number): number {
  let weight = SUMS_WEIGHT;
  let finished = SUMS_WEIGHT * finishShare;
  for (const before of past) {
    const likeness = cardLikeness(before, card);
    weight += likeness;
    if (before.isFinished) finished += likeness;
  }
  return finished / weight;
}

function cardLikeness(a: OpenCard, b: OpenCard): number {
  const left = (Math.log1p(a.leftPoints) - Math.log1p(b.leftPoints)) / STEP_LOG_POINTS;
  const queue = (Math.log1p(a.queuePoints) - Math.log1p(b.queuePoints)) / STEP_LOG_POINTS;
  const unmoved = (lyingDays(a) - lyingDays(b)) / STEP_UNMOVED_DAYS;
  const states = (a.isBegun === b.isBegun ? 0 : 1) + (a.isBlocked === b.isBlocked ? 0 : 1);
  return 1 / (1 + (left * left + queue * queue + unmoved * unmoved + states) / 4) ** 2;
}

function lyingDays({ unmovedDays }: OpenCard): number {
  return Math.min(unmovedDays, MOST_UNMOVED_DAYS);
}

function oddsOf(chance: number): number {
  return chance / (1 - chance);
}

/** Chances of all sums, in half points, when each card is finished by itself at its odds times a factor. */
function sumsOf(
  cards: readonly { readonly halves: number; readonly odds: number }[],
  factor: number,
  most: number,
): Float64Array {
  const sums = new Float64Array(most + 1);
  sums[0] = 1;
  let reached = 0;
  for (const { halves, odds } of cards) {
    const chance = odds === Number.POSITIVE_INFINITY ? 1 : (odds * factor) / (1 + odds * factor);
    reached += halves;
    for (let i = reached; i >= 0; i -= 1) {
      const before = i >= halves ? (sums[i - halves] as number) : 0;
      sums[i] = (sums[i] as number) * (1 - chance) + before * chance;
    }
  }
  return sums;
}
