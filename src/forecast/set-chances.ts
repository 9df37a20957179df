/** What a set of cards is worth as a commitment, before the sprint begins. Knows how large they are, not what they hold. */
import { KEPT_CHANCE } from './commitment-range.ts';
import type { PointsDistribution } from './points-distribution.ts';
import { chanceToGetThrough, pointsUntil, type QueuedCard, workChance } from './whole-cards.ts';

export interface SetChance {
  /** The chance (0 to 1) that the finished ones reach the floor of the kept share. */
  readonly kept: number;
  /** The chance (0 to 1) that all of them are finished. */
  readonly all: number;
}

export interface SetChances extends SetChance {
  /** The size of the card without which the rest is kept most likely, and how likely. Undefined when none helps or is needed. */
  readonly without: (SetChance & { readonly estimatePoints: number }) | undefined;
}

type FinishesOf = (commitmentPoints: number) => Pick<PointsDistribution, 'cdf'>;

/** A card that makes no more difference than this is not worth a word, nor is any in a set that is likely enough. */
const LEAST_DIFFERENCE = 0.02;
/** Against rounding: 0.8 × 35 is a hair above 28, which must not ask for half a point more. */
const SLACK = 1e-9;

/**
 * The chance that a set of cards is kept and that it is finished whole, and the card that endangers it most.
 *
 * Formula: with W ≥ t the chance to get through t points (`workChance` of what the team finishes of a commitment) and T
 * the points of whole cards, in any order, that come before floor × their sum is reached (`pointsUntil`): P(W ≥ T), and
 * P(W ≥ their sum). The card that endangers it most is the one without which P(W ≥ T) of the others is largest.
 * Units: points in, chances from 0 to 1 out. Undefined without points.
 * How it misleads: taking a card out always helps, and taking the largest out nearly always helps most; whether it is
 * needed, the chance doesn't know. Nor does it know surprise work, owners, or the verdict's test of surprise.
 * Source: ours.
 *
 * @param finishesOf how much the team finishes of a commitment of so many points (`commitmentModel`)
 * @example setChances(() => ({ cdf: (points) => (points < 20 ? 0 : 1) }), [13, 7], 0.8)?.kept === 1
 */
export function setChances(
  finishesOf: FinishesOf,
  sizes: readonly number[],
  floor: number,
): SetChances | undefined {
  if (sum(sizes) === 0) return undefined;
  const now = setChance(finishesOf, sizes, floor);
  const others = [...new Set(sizes)]
    .map((estimatePoints) => ({ estimatePoints, rest: sizes.toSpliced(sizes.indexOf(estimatePoints), 1) }))
    .filter(({ rest }) => sum(rest) > 0)
    .map(({ estimatePoints, rest }) => ({ estimatePoints, ...setChance(finishesOf, rest, floor) }))
    .sort((a, b) => b.kept - a.kept || b.estimatePoints - a.estimatePoints);
  const [best] = others;
  const isWorthAWord = now.kept < KEPT_CHANCE && best && best.kept >= now.kept + LEAST_DIFFERENCE;
  return { ...now, without: isWorthAWord ? best : undefined };
}

function setChance(finishesOf: FinishesOf, sizes: readonly number[], floor: number): SetChance {
  const total = sum(sizes);
  const work = workChance(finishesOf(total), sizes, total);
  const cards = sizes.map(
    (estimatePoints): QueuedCard => ({ estimatePoints, isCommitted: true, isBegun: false }),
  );
  const needed = Math.ceil(floor * total * 2 - SLACK) / 2;
  return { kept: chanceToGetThrough(pointsUntil(cards, needed), work), all: work(total) };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
