/**
 * What a sprint will have finished, as its projection and the team's pace see it together. The projection takes the team to finish
 * the same share of whatever is open; the pace knows how much it got through in the same part of past sprints.
 */
import { censoredPredictive } from './censored-predictive.ts';
import type { Amount } from './planned-and-projected.ts';
import type { Interval } from './points-distribution.ts';
import { median } from './quantile.ts';
import type { SprintSoFar } from './sprint-so-far.ts';

/** With fewer the pace would be more belief than data. */
const LEAST_SPRINTS = 3;
/** As for the commitment range: next to nothing is believed of the mean before any data. */
const LEVEL_SPREAD = 0.7;
/** How loudly the planning and the pace speak together, at least. */
const AMOUNTS_SHARE = 0.2;
/** Points come in halves: at most so many are less than a quarter point more. */
const QUARTER_POINT = 0.25;
/** Up to here chances are kept; few sprints hold more. */
const MOST_POINTS = 2_000;
/** Below this chance a ratio of two chances is noise. */
const NEGLIGIBLE = 1e-9;

/** What a past sprint of the team did after the moment that is asked about. Points, scaled to this sprint's length. */
export interface LaterPart {
  /** Worked off the cards' estimates, what was done on cards that were not finished at its end included. */
  readonly workedPoints: number;
  /** Its velocity × the share of its time that was left: what it would have worked off by then at an even pace. */
  readonly evenPoints: number;
  /** What was still to be worked off then. */
  readonly openPoints: number;
  /** Whether nothing was left to do at its end, so that it could have finished more. */
  readonly hadTimeToSpare: boolean;
  /** Whether it was seen; else it is taken to have gone evenly, as the projection takes it already. */
  readonly isWatched: boolean;
}

/** What the team gets through from the moment on, when there is enough to do. */
export interface LaterPace {
  /** The chance (0 to 1) of at least so many points of work. */
  readonly atLeast: (points: number) => number;
  /** The most that was ever open at that moment. */
  readonly mostOpenPoints: number;
  /** How many of the past sprints were watched, 0 to 1. */
  readonly watchedShare: number;
}

/**
 * How much work the team gets through in such a part of a sprint.
 *
 * Formula: the predictive distribution of the past sprints' later parts (`censoredPredictive`), of which one with time to spare says "at
 * least", and no less than at an even pace.
 * Units: points of estimates that are worked off. Undefined with fewer than three parts that show something.
 * How it misleads: what is half done at either end counts by what was said of it.
 * Source: ours; its parts are standard (censored normal observations, Bayes' rule).
 *
 * @param later of the team's own past sprints, at the same share of their time
 * @example laterPace([]) === undefined
 */
export function laterPace(later: readonly LaterPart[]): LaterPace | undefined {
  const known = later.flatMap(({ workedPoints, evenPoints, hadTimeToSpare }): Interval[] => {
    if (!hadTimeToSpare) return [{ low: workedPoints, high: workedPoints }];
    const low = Math.max(workedPoints, evenPoints);
    return low > 0 ? [{ low, high: Number.POSITIVE_INFINITY }] : [];
  });
  const usual = median(later.map(({ evenPoints }) => evenPoints));
  if (known.length < LEAST_SPRINTS || typeof usual !== 'number' || usual <= 0) return undefined;
  const { cdf } = censoredPredictive(known, { centrePoints: usual, levelSpread: LEVEL_SPREAD });
  return {
    atLeast: betweenHalfPoints((points) => 1 - cdf(points - QUARTER_POINT)),
    mostOpenPoints: Math.max(...later.map(({ openPoints }) => openPoints)),
    watchedShare: later.filter(({ isWatched }) => isWatched).length / later.length,
  };
}

/**
 * The chance at each half point is computed once, for its sum over 500 parts took a sixth of a status; between two it goes
 * straight.
 */
function betweenHalfPoints(chanceAt: (points: number) => number): (points: number) => number {
  const known = new Map<number, number>();
  const atHalf = (halves: number): number => {
    const chance = known.get(halves) ?? (halves === 0 ? 1 : chanceAt(halves / 2));
    known.set(halves, chance);
    return chance;
  };
  return (points) => {
    // Not a number: a share of what is open, where nothing is.
    if (!(points > 0)) return 1;
    if (points > MOST_POINTS) return chanceAt(points);
    const below = Math.floor(2 * points);
    const beyond = 2 * points - below;
    return beyond === 0 ? atHalf(below) : (1 - beyond) * atHalf(below) + beyond * atHalf(below + 1);
  };
}

/** A sprint as it is now, and what is still open of its commitment. */
export interface PacedSprint extends SprintSoFar {
  readonly plannedOpenPoints: number;
}

/**
 * The points finished by the sprint's end, as projection and pace see them together.
 *
 * Formula: with V the projected velocity, F what is finished, U what is underway in the open cards, O the rest of their estimates and
 * Y the work that the team gets through from now on: P(finished − F ≥ x) = (1 − s)·g·P(V − F ≥ x) + s·P(Y ≥ w), where w is the work
 * that x takes: x·O ÷ (O + U), and beyond all that is open x − U. g is 1 up to M, the most that was ever open at this moment or what is
 * open of the commitment, and beyond it P(Y ≥ w | Y ≥ M): of that much work no past sprint can speak, so there the pace goes on.
 * s is less by the sprints that nobody watched: of those the projection says already what an even pace would bring.
 * Units: points. Without a pace it is the projection.
 * How it misleads: as its parts do. A team that did finish a whole sprint's cards on its last day is told less of it.
 * Source: a linear pool of two forecasts; Stone, "The opinion pool", 1961 (memory). The shares are ours, from real sprints
 * (docs/forecasts.md).
 *
 * @param share the pace's, 0 to 1 (`paceShare`)
 * @example pacedVelocity({ cdf: () => 1 }, { cardPoints: 5, finishedPoints: 0, underwayPoints: 0, plannedOpenPoints: 5 }, { atLeast: () => 1, mostOpenPoints: 5, watchedShare: 1 }, 0.2).cdf(4.5) === 0.8
 */
export function pacedVelocity(
  projected: Amount,
  { cardPoints, finishedPoints, underwayPoints, plannedOpenPoints }: PacedSprint,
  pace: LaterPace | undefined,
  share: number,
): Amount {
  if (!pace) return projected;
  const openPoints = Math.max(0, cardPoints - finishedPoints);
  const leftPoints = Math.max(0, openPoints - underwayPoints);
  const workFor = (points: number): number =>
    points < openPoints ? (points * leftPoints) / openPoints : leftPoints + points - openPoints;
  const usualPoints = Math.max(pace.mostOpenPoints, workFor(Math.min(plannedOpenPoints, openPoints)));
  const usualChance = pace.atLeast(usualPoints);
  const spoken = share * pace.watchedShare;
  const above = (points: number): number => {
    // Points come in halves: more than this is at least the next half point.
    const work = workFor(Math.floor(2 * points + 1) / 2 - finishedPoints);
    const paced = pace.atLeast(work);
    const goesOn = work <= usualPoints || usualChance < NEGLIGIBLE ? 1 : Math.min(1, paced / usualChance);
    return (1 - spoken) * goesOn * (1 - projected.cdf(points)) + spoken * paced;
  };
  return { cdf: (points) => 1 - above(points) };
}

/**
 * How much of what isn't the planning's comes from the pace: so much that amounts of the past, the planning's and the pace's, speak
 * for a fifth of the whole at least.
 *
 * @param planShare the planning's, 0 to below 1
 * @example paceShare(0) === 0.2
 */
export function paceShare(planShare: number): number {
  return Math.max(0, AMOUNTS_SHARE - planShare) / (1 - planShare);
}
