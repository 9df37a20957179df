import { KEPT_CHANCE } from './commitment-range.ts';
import type { LoadSignal } from './pace.ts';
import type { PointsDistribution } from './points-distribution.ts';
import { chanceToGetThrough, pointsUntil, type QueuedCard, workChance } from './whole-cards.ts';

/** The cards of a running sprint, as far as the chances to keep and to finish go. Dropped ones are left out. */
export interface LoadedSprint {
  /** Estimates of all of them, finished or open. */
  readonly sizes: readonly number[];
  readonly finishedPoints: number;
  readonly open: readonly QueuedCard[];
  /** Committed points to be finished still for the kept share to reach its floor; 0 or less: it has. */
  readonly missingPoints: number;
}

export interface LoadReading {
  readonly signal: LoadSignal;
  /** The chance that as many committed points get finished as the kept share asks for. */
  readonly keepingChance: number;
  /** The chance that everything in the sprint gets finished. */
  readonly allFinishedChance: number;
  /** Whether the kept share is reached only when everything is finished, so that both are the same chance. */
  readonly isAllNeeded: boolean;
}

/** Missed more often than kept is too much. */
const HEAVY_BELOW = 0.5;
/** From this chance to finish everything on, there is room for more. */
const LIGHT_FROM = KEPT_CHANCE;

/**
 * Whether the sprint carries too much or too little, as its projection says.
 *
 * Formula: with V the points finished by the end, W ≥ t the chance to get through t points (`workChance` of V) and T the
 * points of whole cards that come before the missing ones are finished (`pointsUntil`), `heavy` if P(W ≥ T) < 50%, else
 * `light` if P(V ≥ all cards) ≥ 80%, else `on the line`. A sprint that needs no points is `light`.
 * Units: points and chances from 0 to 1.
 * How it misleads: it takes the cards that were begun to come first and knows no other order; and a team with little
 * history gets a cautious answer, which is `on the line` more often than it should be. The surprise ratio, the verdict's
 * other test, is not in it.
 *
 * @example loadReading({ cdf: () => 0 }, { sizes: [20], finishedPoints: 20, open: [], missingPoints: 0 }).signal === 'light'
 */
export function loadReading(
  velocity: Pick<PointsDistribution, 'cdf'>,
  { sizes, finishedPoints, open, missingPoints }: LoadedSprint,
): LoadReading {
  const openPoints = open.reduce((sum, { estimatePoints }) => sum + estimatePoints, 0);
  const finishedLater = { cdf: (points: number) => velocity.cdf(finishedPoints + points) };
  const work = workChance(finishedLater, sizes, openPoints);
  const until = pointsUntil(open, missingPoints);
  const keepingChance = chanceToGetThrough(until, work);
  const allFinishedChance = chanceOfAtLeast(velocity, finishedPoints + openPoints);
  return {
    signal: signalOf(keepingChance, allFinishedChance),
    keepingChance,
    allFinishedChance,
    isAllNeeded: openPoints > 0 && until?.quantile(0) === openPoints,
  };
}

/**
 * The chance (0 to 1) that at least so many points get finished, whatever the cards are. Points come in halves: at least so
 * many are more than the half point below.
 */
export function chanceOfAtLeast(velocity: Pick<PointsDistribution, 'cdf'>, points: number): number {
  return points <= 0 ? 1 : 1 - velocity.cdf(Math.ceil(points * 2) / 2 - 0.5);
}

function signalOf(keepingChance: number, allFinishedChance: number): LoadSignal {
  if (keepingChance < HEAVY_BELOW) return 'heavy';
  return allFinishedChance >= LIGHT_FROM ? 'light' : 'on the line';
}
