/**
 * How many points a team finishes in its working time, and how unsure that is: how much its sprints scatter, how few
 * of them there are, and how far its pace wandered so far. Knows no calendar.
 */
import { normalCdf } from './normal-distribution.ts';

/** A closed sprint of a team. */
export interface PacedSprint {
  readonly velocityPoints: number;
  /** The team's working time in it, above 0, in a unit that all its sprints share: member-days, if they are known. */
  readonly time: number;
}

export interface TeamPace {
  /** Points in one unit of time; above 0. */
  readonly pointsPerTime: number;
  /** Variance of the points of one unit of time ÷ their mean squared: by how much single sprints scatter. */
  readonly scatter: number;
  /** Variance of the logarithm of the pace to come ÷ the pace so far. */
  readonly wander: number;
}

/** A team of long ago is another team. On real sprints a longer memory was no better (docs/forecasts.md). */
export const LATEST_SPRINTS = 24;
/** So many sprints back a sprint counts half. */
const HALF_LIFE_SPRINTS = 2.5;
/** Over so many sprints together it is looked at how far the pace has wandered. */
const STRETCH_SPRINTS = 5;
/** What is believed of a team's wandering before it has shown any: the deviation of the logarithm of its pace … */
const USUAL_WANDER = 0.5;
/** … and as how many stretches of its own this counts. */
const USUAL_WANDER_STRETCHES = 5;
/** From how many sprints a pace is read. */
export const LEAST_SPRINTS_FOR_PACE = 3;
/** No stretch counts for more than a pace that e^1.5 = 4.5 times as fast or as slow as before. */
const FURTHEST_LOG = 1.5;

interface Level {
  readonly pointsPerTime: number;
  /** Σ w²·time ÷ (Σ w·time)²: with how much scatter the level is known. */
  readonly spread: number;
  readonly weights: readonly number[];
}

/** Of the sprints before `end`. */
function levelOf(sprints: readonly PacedSprint[], end: number): Level {
  const weights: number[] = [];
  let [points, time, squares] = [0, 0, 0];
  for (let i = Math.max(0, end - LATEST_SPRINTS); i < end; i += 1) {
    const sprint = sprints[i] as PacedSprint;
    const weight = 0.5 ** ((end - 1 - i) / HALF_LIFE_SPRINTS);
    weights.push(weight);
    points += weight * sprint.velocityPoints;
    time += weight * sprint.time;
    squares += weight ** 2 * sprint.time;
  }
  return { pointsPerTime: points / time, spread: squares / time ** 2, weights };
}

/**
 * What the latest 24 sprints say of the pace to come.
 *
 * Formula, with w = 2^(−age ÷ 2.5), v points and t time of a sprint: pace m = Σ w·v ÷ Σ w·t; scatter
 * s² = Σ w·t·(v ÷ (t·m) − 1)² ÷ Σ w ÷ (1 − Σ w² ÷ (Σ w)²), so that the points of a time T scatter by s² ÷ T of their
 * square; wander σ² = τ² + s²·Σ w²·t ÷ (Σ w·t)², which is how far the pace wanders and how poorly few sprints show it.
 * For τ², each five sprints in a row are compared with the pace before them:
 * τ² = (5·0.5² + n·max(0, mean of ln²(pace of the five ÷ pace before) − what scatter alone makes of it)) ÷ (5 + n),
 * with n the number of comparisons ÷ 5, since they overlap.
 * Units: points per unit of time; variances have none. Undefined below three sprints and without any points.
 * How it misleads: a team that has just changed looks as it did before for a few sprints.
 * Source: shrinking a variance towards a prior worth so many observations is common practice (a scaled inverse
 * chi-squared prior); the numbers are round ones, from real sprints (docs/forecasts.md).
 *
 * @param sprints oldest first
 * @example teamPace([{ velocityPoints: 10, time: 5 }, { velocityPoints: 10, time: 5 }, { velocityPoints: 20, time: 10 }]).pointsPerTime === 2
 */
export function teamPace(sprints: readonly PacedSprint[]): TeamPace | undefined {
  return teamPaces(sprints)(sprints.length);
}

/** The pace as it was after each number of sprints; to read many of them costs little more than to read one. */
export function teamPaces(sprints: readonly PacedSprint[]): (end: number) => TeamPace | undefined {
  const levelAt = remembered((end) => levelOf(sprints, end));
  const wanderedAt = remembered((start) => wandered(sprints, start, levelAt(start).pointsPerTime));
  return (end) => {
    if (end < LEAST_SPRINTS_FOR_PACE || levelAt(end).pointsPerTime === 0) return undefined;
    return paceAt(sprints, end, levelAt(end), wanderedAt);
  };
}

function remembered<T>(valueAt: (place: number) => T): (place: number) => T {
  const values: T[] = [];
  return (place) => {
    values[place] ??= valueAt(place);
    return values[place];
  };
}

function paceAt(
  sprints: readonly PacedSprint[],
  end: number,
  { pointsPerTime, spread, weights }: Level,
  wanderedAt: (start: number) => number,
): TeamPace {
  const first = end - weights.length;
  let [squares, weight, weightSquares, timeSum] = [0, 0, 0, 0];
  for (const [i, w] of weights.entries()) {
    const { velocityPoints, time } = sprints[first + i] as PacedSprint;
    squares += w * time * (velocityPoints / time / pointsPerTime - 1) ** 2;
    weight += w;
    weightSquares += w ** 2;
    timeSum += time;
  }
  // As for n ÷ (n − 1) with equal weights.
  const scatter = squares / weight / (1 - weightSquares / weight ** 2);
  const usualTime = timeSum / weights.length;
  const byScatter = scatter * (1 / (STRETCH_SPRINTS * usualTime) + spread);
  return { pointsPerTime, scatter, wander: ownWander(end, wanderedAt, byScatter) + scatter * spread };
}

function ownWander(end: number, wanderedAt: (start: number) => number, byScatter: number): number {
  let [squares, compared] = [0, 0];
  const from = Math.max(LEAST_SPRINTS_FOR_PACE, end - 2 * LATEST_SPRINTS);
  for (let start = from; start + STRETCH_SPRINTS <= end; start += 1) {
    const square = wanderedAt(start);
    if (Number.isNaN(square)) continue;
    squares += square;
    compared += 1;
  }
  const stretches = compared / STRETCH_SPRINTS;
  const own = compared === 0 ? 0 : Math.max(0, squares / compared - byScatter);
  const usual = USUAL_WANDER_STRETCHES * USUAL_WANDER ** 2;
  return (usual + stretches * own) / (USUAL_WANDER_STRETCHES + stretches);
}

/** ln²(pace of the five sprints from here ÷ pace before them); NaN where there was none before. */
function wandered(sprints: readonly PacedSprint[], start: number, before: number): number {
  if (before === 0) return Number.NaN;
  let [points, time] = [0, 0];
  for (const sprint of sprints.slice(start, start + STRETCH_SPRINTS)) {
    points += sprint.velocityPoints;
    time += sprint.time;
  }
  const log = points === 0 ? FURTHEST_LOG : Math.log(points / time / before);
  return Math.min(FURTHEST_LOG, Math.abs(log)) ** 2;
}

/**
 * The chance that so many points are finished in so much working time.
 *
 * Formula: Φ((ln(m·T ÷ B) − l ÷ 2) ÷ √(l + σ²)) with l = ln(1 + s² ÷ T): the points of the time T are taken to be
 * lognormal, with the mean and variance that independent sprints have, times a pace that wanders around 1.
 * Units: a chance from 0 to 1. 0 without time.
 * How it misleads: over one or two sprints, a team that finishes all or nothing isn't lognormal. Against all sequences
 * of three to twelve throws of a die it is 6 percentage points off at the most.
 *
 * @example chanceFinished({ pointsPerTime: 2, scatter: 0, wander: 1 }, 20, 10) === 0.5
 */
export function chanceFinished({ pointsPerTime, scatter, wander }: TeamPace, points: number, time: number) {
  if (time <= 0) return 0;
  const log = Math.log1p(scatter / time);
  const ahead = Math.log((pointsPerTime * time) / points) - log / 2;
  const deviation = Math.sqrt(log + wander);
  if (deviation === 0) return ahead >= 0 ? 1 : 0;
  return normalCdf(ahead / deviation);
}
