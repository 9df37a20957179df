import { KEPT_CHANCE } from './commitment-range.ts';
import type { LoadSignal } from './pace.ts';
import type { PointsDistribution } from './points-distribution.ts';

export interface LoadReading {
  readonly signal: LoadSignal;
  /** The chance that as many points get finished as the kept share asks for. */
  readonly keepingChance: number;
  /** The chance that everything in the sprint gets finished. */
  readonly allFinishedChance: number;
}

/** Missed more often than kept is too much. */
const HEAVY_BELOW = 0.5;
/** From this chance to finish everything on, there is room for more. */
const LIGHT_FROM = KEPT_CHANCE;

/**
 * Whether the sprint carries too much or too little, as its projection says.
 *
 * Formula: with V the points finished by the end, `heavy` if P(V ≥ floor) < 50%, else `light` if
 * P(V ≥ all cards) ≥ 80%, else `on the line`. A sprint that needs no points is `light`.
 * Units: points and chances from 0 to 1.
 * How it misleads: any finished points count, whether they were committed to or pulled in; and a team with little
 * history gets a cautious answer, which is `on the line` more often than it should be.
 *
 * @example loadReading({ cdf: () => 0, quantile: () => 30 }, { floorPoints: 16, cardPoints: 20 }).signal === 'light'
 */
export function loadReading(
  velocity: PointsDistribution,
  { floorPoints, cardPoints }: { readonly floorPoints: number; readonly cardPoints: number },
): LoadReading {
  const keepingChance = chanceOfAtLeast(velocity, floorPoints);
  const allFinishedChance = chanceOfAtLeast(velocity, cardPoints);
  return { signal: signalOf(keepingChance, allFinishedChance), keepingChance, allFinishedChance };
}

function signalOf(keepingChance: number, allFinishedChance: number): LoadSignal {
  if (keepingChance < HEAVY_BELOW) return 'heavy';
  return allFinishedChance >= LIGHT_FROM ? 'light' : 'on the line';
}

/** Points come in halves: at least so many are more than the half point below. */
function chanceOfAtLeast(velocity: PointsDistribution, points: number): number {
  return points <= 0 ? 1 : 1 - velocity.cdf(Math.ceil(points * 2) / 2 - 0.5);
}
