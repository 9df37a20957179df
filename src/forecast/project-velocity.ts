/**
 * The points that a sprint will have finished by its end, from its state now and how sprints like it went on.
 * The team's own sprints speak first; those of other teams and a guess without any history fill in where it has too
 * few. It reads no clock: the caller gives each past sprint as it was at the same share of its time.
 */
import { carriedOutcome, evenlyFinished, isWatched, toHalfPoints } from './carried-outcome.ts';
import {
  type CoverageKeeper,
  depthsOf,
  type Intervals,
  intervalsOf,
  NEW_KEEPER,
  withOutcome,
} from './coverage-keeper.ts';
import type { Interval } from './points-distribution.ts';
import { singleGuess, usualOutcome } from './single-guess.ts';
import { likeness, type SprintStart, type SprintTraits, traitsOf } from './sprint-likeness.ts';
import type { SprintSoFar } from './sprint-so-far.ts';
import {
  correctedDistribution,
  correctedPlace,
  type OutcomePlace,
  type Places,
  withPlaces,
} from './told-chances.ts';
import { type WeightedPoints, weightedPoints } from './weighted-points.ts';

/** A closed sprint as the projection sees it. */
export interface EndedSprint {
  readonly team: string;
  /** Its state at the moment that is asked about; only its start where nobody watched it (an import). */
  readonly soFar: SprintSoFar | SprintStart;
  readonly velocityPoints: number;
}

/** What has been learnt from the sprints so far, in the order in which they ended. */
export interface ProjectionHistory {
  readonly sprints: readonly (EndedSprint & { readonly traits: SprintTraits })[];
  /** How many of them nobody watched. */
  readonly unwatchedSprints: number;
  /** Where their outcomes fell in what had been foretold of them, before any correction. */
  readonly places: Places;
  readonly keeper: CoverageKeeper;
}

/**
 * How many of the latest sprints are looked back at: the team's own, and all those of other teams together, which only
 * fill in. On real sprints more of either made no projection better (docs/forecasts.md).
 */
export const MOST_SPRINTS_BACK = { own: 100, others: 200 };

export const NO_HISTORY: ProjectionHistory = {
  sprints: [],
  unwatchedSprints: 0,
  places: [],
  keeper: NEW_KEEPER,
};

export interface VelocityProjection extends Intervals {
  readonly distribution: WeightedPoints;
  /**
   * The best single guess (`single-guess.ts`), to half a point. It goes by what past sprints say before their chances are
   * corrected: that keeps promises of all sprints together and draws single guesses away (docs/forecasts.md).
   */
  readonly medianPoints: number;
  readonly meanPoints: number;
  readonly ownSprints: number;
  /** The own sprints, each counted by how alike it is: 0 means that none says anything. */
  readonly alikeSprints: number;
  /**
   * Sprints whose end was compared with what had been projected for them, imported ones not among them. Below
   * `LEAST_SCORES` the intervals promise nothing: they span all that is possible.
   */
  readonly watchedSprints: number;
}

/** All sprints of other teams together weigh at most as much as so many own ones that are just like this … */
const OTHER_TEAMS_WEIGHT = 1;
/** … and half as much once a team has so many sprints of its own, whether they are alike or not. */
const BORROWING_HALVES_AT_SPRINTS = 20;
/** However unlike, a sprint of the team's own says a little. */
const LEAST_OWN_WEIGHT = 0.05;
/**
 * Where no other team lends, the team's latest watched sprints stand in, alike or not: together twice what others might have
 * lent, for they are its own, and less in proportion while it has fewer than three.
 */
const STAND_INS = { weight: 2, latestSprints: 12, fullFromSprints: 3 };
/** A team's own sprint counts half when so many of its sprints came after it. */
const HALF_LIFE_SPRINTS = 40;
/** A guess without history: any share of the open work is as likely as any other. Weighs as half a sprint. */
const GUESS_WEIGHT = 0.5;
/** How much of this weight it has in the single guess, which need not say how unsure it is. */
const GUESS_PART_OF_SINGLE = 0.5;
const GUESS_SHARES = [0.05, 0.15, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85, 0.95];

/**
 * The distribution of the points finished by the sprint's end, with its median and two intervals: `narrow` should
 * hold the truth in half of all sprints, `wide` in four of five.
 *
 * Formula: each past sprint's outcome, carried over to this one's size and progress (`carriedOutcome`), weighted by
 * its likeness; other teams' weights are scaled down together to at most 20 ÷ (20 + own sprints), as what is borrowed
 * fades once a team is known (credibility weighting; Bühlmann, 1967; memory); of what they don't lend, twice as much goes
 * evenly to the team's latest twelve watched sprints, and a spread-out guess of weight ½ is added (the mean of a Dirichlet process:
 * history speaks as loudly as there is of it). A past sprint of which only the start is
 * known speaks for one half of its weight so, and for the other as if it had finished evenly over its time. The intervals are taken
 * around the median so wide that intervals like them held the truth often enough before (`coverage-keeper.ts`).
 * Units: points. Always defined: without history it is the guess, and the intervals span all of it.
 * How it misleads: it knows points, not people; holidays, an incident or a changed team are news to it. Where an
 * outcome is nearly certain its intervals hold it more often than they promise, and less often elsewhere.
 * Source: the idea is that of analogue forecasting (Lorenz, "Atmospheric predictability as revealed by naturally
 * occurring analogues", 1969; memory).
 *
 * @example projectVelocity(NO_HISTORY, 'a', { cardPoints: 20, finishedPoints: 10, underwayPoints: 0 }).wide.high === 19.5
 */
export function projectVelocity(
  history: ProjectionHistory,
  team: string,
  now: SprintSoFar,
): VelocityProjection {
  const forecast = forecastOf(history, team, now);
  const { outcomes, weights, ownSprints, alikeSprints } = forecast;
  const distribution = correctedDistribution(history.places, weightedPoints(outcomes, weights));
  const { narrow, wide } = intervalsOf(history.keeper, distribution);
  const medianPoints = toHalfPoints(guessOf(forecast, history, team, now));
  return {
    distribution,
    medianPoints,
    meanPoints: distribution.meanPoints,
    narrow: withPoints(narrow, medianPoints),
    wide: withPoints(wide, medianPoints),
    ownSprints,
    alikeSprints,
    watchedSprints: history.keeper.scores.length,
  };
}

function guessOf(
  { outcomes, weights, alikeSprints }: Forecast,
  { sprints }: ProjectionHistory,
  team: string,
  now: SprintSoFar,
): number {
  const inSingle = weights.slice();
  for (let i = sprints.length; i < sprints.length + GUESS_SHARES.length; i += 1) {
    inSingle[i] = GUESS_PART_OF_SINGLE * (weights[i] as number);
  }
  return singleGuess(weightedPoints(outcomes, inSingle), alikeSprints, usualOutcome(sprints, team, now));
}

/** No interval leaves the single guess out. */
function withPoints({ low, high }: Interval, points: number): Interval {
  return { low: Math.min(low, points), high: Math.max(high, points) };
}

interface Forecast extends Pick<VelocityProjection, 'ownSprints' | 'alikeSprints'> {
  /** Points, and what each of them weighs. */
  readonly outcomes: Float64Array;
  readonly weights: Float64Array;
}

/** What each past sprint foretells for this one, and the guess. */
function forecastOf(
  { sprints, unwatchedSprints }: ProjectionHistory,
  team: string,
  now: SprintSoFar,
): Forecast {
  const traits = traitsOf(now);
  const outcomes = new Float64Array(sprints.length + GUESS_SHARES.length + unwatchedSprints);
  const weights = new Float64Array(outcomes.length);
  let ownSprints = 0;
  let ownWeight = 0;
  let otherWeight = 0;
  for (let i = sprints.length - 1; i >= 0; i -= 1) {
    const past = sprints[i] as (typeof sprints)[number];
    const alike = likeness(past.traits, traits);
    outcomes[i] = carriedOutcome(past.soFar, past.velocityPoints, now);
    if (past.team === team) {
      const recency = 0.5 ** (ownSprints / HALF_LIFE_SPRINTS);
      weights[i] = (LEAST_OWN_WEIGHT + (1 - LEAST_OWN_WEIGHT) * alike) * recency;
      ownSprints += 1;
      ownWeight += alike * recency;
    } else {
      weights[i] = alike;
      otherWeight += alike;
    }
  }
  const mostBorrowed =
    (OTHER_TEAMS_WEIGHT * BORROWING_HALVES_AT_SPRINTS) / (BORROWING_HALVES_AT_SPRINTS + ownSprints);
  if (otherWeight > mostBorrowed) {
    const scale = mostBorrowed / otherWeight;
    for (const [i, past] of sprints.entries()) {
      if (past.team !== team) weights[i] = (weights[i] as number) * scale;
    }
  }
  const unlent = mostBorrowed - Math.min(otherWeight, mostBorrowed);
  if (unlent > 0) addStandIns(weights, sprints, team, unlent);
  const openPoints = Math.max(0, now.cardPoints - now.finishedPoints);
  for (const [i, share] of GUESS_SHARES.entries()) {
    outcomes[sprints.length + i] = toHalfPoints(now.finishedPoints + share * openPoints);
    weights[sprints.length + i] = GUESS_WEIGHT / GUESS_SHARES.length;
  }
  let place = sprints.length + GUESS_SHARES.length;
  for (const [i, { soFar, velocityPoints }] of sprints.entries()) {
    if (isWatched(soFar)) continue;
    const half = (weights[i] as number) / 2;
    weights[i] = half;
    weights[place] = half;
    outcomes[place] = evenlyFinished(soFar, velocityPoints, now);
    place += 1;
  }
  return { outcomes, weights, ownSprints, alikeSprints: ownWeight };
}

/** What the others don't lend is spread evenly over the team's latest sprints. */
function addStandIns(
  weights: Float64Array,
  sprints: ProjectionHistory['sprints'],
  team: string,
  unlentWeight: number,
): void {
  const { weight, latestSprints, fullFromSprints } = STAND_INS;
  const latest: number[] = [];
  for (let i = sprints.length - 1; i >= 0 && latest.length < latestSprints; i -= 1) {
    const past = sprints[i] as (typeof sprints)[number];
    if (past.team === team && isWatched(past.soFar)) latest.push(i);
  }
  const each = (weight * unlentWeight * Math.min(1, latest.length / fullFromSprints)) / latest.length;
  for (const i of latest) weights[i] = (weights[i] as number) + each;
}

/** Where the outcome fell in what was forecast. Found without making the distribution: this runs for every past sprint. */
function placeOf({ outcomes, weights }: Forecast, outcomePoints: number): OutcomePlace {
  let less = 0;
  let same = 0;
  let total = 0;
  for (let i = 0; i < outcomes.length; i += 1) {
    const weight = weights[i] as number;
    const points = outcomes[i] as number;
    total += weight;
    if (points < outcomePoints) less += weight;
    else if (points === outcomePoints) same += weight;
  }
  return { lessChance: less / total, atMostChance: (less + same) / total };
}

/**
 * The history after some more sprints. Those given together are taken to have run at the same time: each is
 * projected from the history before all of them, and only then are they learnt.
 */
export function withEndedSprints(
  history: ProjectionHistory,
  ended: readonly EndedSprint[],
): ProjectionHistory {
  let keeper = history.keeper;
  const depths = depthsOf(keeper);
  const places: OutcomePlace[] = [];
  for (const { team, soFar, velocityPoints } of ended) {
    // A sprint that was not watched was not projected either.
    if (!isWatched(soFar)) continue;
    const place = placeOf(forecastOf(history, team, soFar), velocityPoints);
    places.push(place);
    keeper = withOutcome(keeper, depths, correctedPlace(history.places, place));
  }
  const learnt = ended.map((sprint) => ({ ...sprint, traits: traitsOf(sprint.soFar) }));
  return {
    sprints: [...history.sprints, ...learnt],
    unwatchedSprints: history.unwatchedSprints + ended.filter(({ soFar }) => !isWatched(soFar)).length,
    places: withPlaces(history.places, places),
    keeper,
  };
}
