/**
 * Chances over sums of whole cards: nobody finishes 16 points of a card of 13 and one of 7. Knows how large cards are and
 * which of them were begun; not whose they are.
 */
import { gaussLegendre } from './gauss-legendre.ts';
import type { PointsDistribution } from './points-distribution.ts';
import { type WeightedPoints, weightedPoints } from './weighted-points.ts';

/** A card that is still to be finished. */
export interface QueuedCard {
  readonly estimatePoints: number;
  /** Whether it counts for the kept share. One that was pulled in only takes time. */
  readonly isCommitted: boolean;
  readonly isBegun: boolean;
}

/** The chance (0 to 1) that the team gets through at least so many points of work. */
export type WorkChance = (points: number) => number;

const HALVES_PER_POINT = 2;
/** Sums beyond so many steps are counted in coarser ones: only cards of hundreds of points have such sums. */
const MOST_STEPS = 4000;
/** Against rounding: a floor that is a whole sum by design must not ask for half a point more. */
const SLACK = 1e-9;

/**
 * How many points of cards the team gets through before those of them that count come to so many.
 *
 * Formula: cards that were begun come before the others, and among each kind every order is as likely as any other. The
 * amount is the sum of all cards, pulled-in ones too, up to the committed one with which the missing points are reached.
 * Each card is given a place u in [0, 1]: the chance that card c of size s reaches them is the integral over u of
 * P(m − s ≤ sum of the other committed cards before u < m), where each lies before u with chance u. The integrand is a
 * polynomial, so Gauss's rule gives it exactly.
 * Units: points, sums of estimates; with more than 2,000 points the steps are coarser than half a point.
 * Undefined when all the cards together don't reach the missing points. 0 when none is missing.
 * How it misleads: a team chooses its order, and the more urgent card comes first whatever its size.
 * Source: ours; sampling without replacement by random places, and Gauss's rule, are standard.
 *
 * @example pointsUntil([{ estimatePoints: 13, isCommitted: true, isBegun: false }, { estimatePoints: 7, isCommitted: true, isBegun: false }], 16)?.meanPoints === 20
 */
export function pointsUntil(cards: readonly QueuedCard[], missingPoints: number): WeightedPoints | undefined {
  if (missingPoints <= SLACK) return weightedPoints([0], [1]);
  const begun = cards.filter(({ isBegun }) => isBegun);
  const others = cards.filter(({ isBegun }) => !isBegun);
  const inBegun = sumOf(begun.filter(({ isCommitted }) => isCommitted));
  const isAmongBegun = missingPoints <= inBegun + SLACK;
  const [queue, before, missing] = isAmongBegun
    ? [begun, 0, missingPoints]
    : [others, sumOf(begun), missingPoints - inBegun];
  const committed = queue.filter(({ isCommitted }) => isCommitted);
  if (sumOf(committed) < missing - SLACK) return undefined;
  return untilReached(committed, queue, before, missing);
}

function untilReached(
  committed: readonly QueuedCard[],
  queue: readonly QueuedCard[],
  beforePoints: number,
  missingPoints: number,
): WeightedPoints {
  const step = stepOf(queue);
  const steps = ({ estimatePoints }: QueuedCard): number => Math.round(estimatePoints / step);
  const counting = countsOf(committed.map(steps));
  const passing = countsOf(queue.filter(({ isCommitted }) => !isCommitted).map(steps));
  const most = committed.reduce((total, card) => total + steps(card), 0);
  const missing = Math.min(most, Math.ceil(missingPoints / step - SLACK));
  const chances = new Float64Array(queue.reduce((total, card) => total + steps(card), 0) + 1);
  for (const { at, weight } of gaussLegendre(Math.ceil(queue.length / 2))) {
    const reached = reachedAt(counting, most, missing, at);
    const passed = sumsBefore(passing, chances.length - 1 - most, at);
    for (let sum = missing; sum < reached.length; sum += 1) {
      const chance = weight * (reached[sum] as number);
      if (chance === 0) continue;
      for (let more = 0; more < passed.length; more += 1) {
        chances[sum + more] = (chances[sum + more] as number) + chance * (passed[more] as number);
      }
    }
  }
  return weightedPoints(
    Array.from(chances, (_, i) => beforePoints + i * step),
    chances,
  );
}

/** The largest step, in points, of which every card is a multiple. */
function stepOf(cards: readonly QueuedCard[]): number {
  const common = cards.reduce((so, { estimatePoints }) => divisor(estimatePoints * HALVES_PER_POINT, so), 0);
  const step = common / HALVES_PER_POINT;
  return Math.max(step, sumOf(cards) / MOST_STEPS);
}

function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b);
}

/** How many cards there are of each size above 0. */
function countsOf(sizes: readonly number[]): Map<number, number> {
  const counts = new Map<number, number>();
  for (const size of sizes) if (size > 0) counts.set(size, (counts.get(size) ?? 0) + 1);
  return counts;
}

/** The chance of each sum when every card is among them with the same chance, apart from the others. */
function sumsBefore(counts: ReadonlyMap<number, number>, most: number, chance: number): Float64Array {
  const sums = new Float64Array(most + 1);
  sums[0] = 1;
  let reach = 0;
  for (const [size, count] of counts) {
    for (let i = 0; i < count; i += 1) {
      reach += size;
      for (let sum = reach; sum >= 0; sum -= 1) {
        const without = sum >= size ? (sums[sum - size] as number) : 0;
        sums[sum] = (1 - chance) * (sums[sum] as number) + chance * without;
      }
    }
  }
  return sums;
}

/** How densely the missing points are reached at a place, by what the committed cards then come to. */
function reachedAt(
  counts: ReadonlyMap<number, number>,
  most: number,
  missing: number,
  at: number,
): Float64Array {
  const sums = sumsBefore(counts, most, at);
  const reached = new Float64Array(most + 1);
  for (const [size, count] of counts) {
    const others = withoutOne(sums, size, at);
    for (let sum = Math.max(0, missing - size); sum < missing && sum + size <= most; sum += 1) {
      reached[sum + size] = (reached[sum + size] as number) + count * (others[sum] as number);
    }
  }
  return reached;
}

/** Takes one card out of the sums again: from below where it is rather absent, from above where it is rather present. */
function withoutOne(sums: Float64Array, size: number, chance: number): Float64Array {
  const others = new Float64Array(sums.length);
  const last = sums.length - 1 - size;
  if (chance <= 0.5) {
    for (let sum = 0; sum <= last; sum += 1) {
      const before = sum >= size ? (others[sum - size] as number) : 0;
      others[sum] = Math.max(0, ((sums[sum] as number) - chance * before) / (1 - chance));
    }
    return others;
  }
  for (let sum = last; sum >= 0; sum -= 1) {
    const above = sum + size <= last ? (others[sum + size] as number) : 0;
    others[sum] = Math.max(0, ((sums[sum + size] as number) - (1 - chance) * above) / chance);
  }
  return others;
}

function sumOf(cards: readonly QueuedCard[]): number {
  return cards.reduce((total, { estimatePoints }) => total + estimatePoints, 0);
}

/**
 * The chance to get through so many points of work, from what is known of the points that are finished in whole cards.
 *
 * Formula: W = V + X, with V the finished points and X what was done on the card that is not finished: as the past teams
 * cut their cards as this one does, X ≥ d with chance Σ (sizeᵢ − d)⁺ ÷ Σ sizeᵢ (the age of a renewal process). Where it is
 * known that V falls short of everything there is, W does so too: X is then less than the rest.
 * Units: points in, a chance from 0 to 1 out. V is rounded to half a point.
 * How it misleads: where several work side by side, more than one card is left half done.
 * Source: ours; the age of a renewal process: Feller, "An introduction to probability theory", volume 2, XI.4 (memory).
 *
 * @param sizes estimates of the cards, finished ones too: how the work is cut
 * @param everything all the points there are, where V was projected from sprints that held as much; else infinite
 * @example workChance({ cdf: (points) => (points < 10 ? 0 : 1) }, [4])(12) === 0.5
 */
export function workChance(
  finished: Pick<PointsDistribution, 'cdf'>,
  sizes: readonly number[],
  everything: number = Number.POSITIVE_INFINITY,
): WorkChance {
  const total = sizes.reduce((sum, size) => sum + size, 0);
  const halves = Math.ceil(Math.max(0, ...sizes) * HALVES_PER_POINT);
  const begunBeyond = Float64Array.from({ length: halves + 1 }, (_, i) =>
    total === 0 ? 0 : sizes.reduce((sum, size) => sum + Math.max(0, size - i / HALVES_PER_POINT), 0) / total,
  );
  const beyond = (distance: number): number =>
    distance < begunBeyond.length ? (begunBeyond[distance] as number) : 0;
  const known = new Map<number, number>();
  const below = (half: number): number => {
    const before = known.get(half);
    if (before !== undefined) return before;
    const chance = finished.cdf((half - 0.5) / HALVES_PER_POINT);
    known.set(half, chance);
    return chance;
  };
  const all = Math.round(everything * HALVES_PER_POINT);
  return (points) => {
    if (points <= 0) return 1;
    const half = Math.ceil(points * HALVES_PER_POINT - SLACK);
    let more = below(half);
    let chance = 1 - more;
    for (let distance = 1; distance < halves; distance += 1) {
      const less = below(half - distance);
      const never = beyond(all - half + distance);
      if (never < 1) chance += ((more - less) * Math.max(0, beyond(distance) - never)) / (1 - never);
      more = less;
    }
    return Math.min(1, chance);
  };
}

/**
 * The chance that work of which the amount is unsure gets done.
 *
 * Formula: Σ P(T = t) · P(W ≥ t). Units: points in, a chance from 0 to 1 out. 0 for an amount that can't be reached.
 *
 * @example chanceToGetThrough(undefined, () => 1) === 0
 */
export function chanceToGetThrough(until: WeightedPoints | undefined, work: WorkChance): number {
  if (until === undefined) return 0;
  let chance = 0;
  for (const [i, points] of until.points.entries()) chance += (until.chances[i] as number) * work(points);
  return Math.min(1, chance);
}
