/**
 * When a larger body of work will be finished, as three dates. What a sprint brings comes from the team's latest
 * sprints; how sure that is, from how much the pace of teams has been seen to wander.
 */
import { type Day, dayPlus } from '../sprint/calendar.ts';
import { type UndefinedValue, undefinedBecause } from '../sprint/undefined-value.ts';
import { chancesToFinish } from './sprints-to-finish.ts';
import { weightedPoints } from './weighted-points.ts';

export interface ReleaseQuestion {
  readonly backlogPoints: number;
  /** Points by which the backlog grows with each sprint; 0 for a body of work that is settled. */
  readonly scopeGrowthPoints: number;
  /** Velocities of the team's closed sprints, oldest first, in multiples of half a point. */
  readonly velocities: readonly number[];
  /** The first day of the first sprint that will work on it. */
  readonly startsOn: Day;
  /** Calendar days from the start of a sprint to the start of the next. */
  readonly sprintLengthDays: number;
}

export interface ReleaseDate {
  /** The chance that the work is finished by then. */
  readonly chance: number;
  /** Sprints it takes; a part of a sprint counts as that part of its days. */
  readonly sprints: number;
  /** The day of it; the work is in hand at the end of the sprint that holds this day. */
  readonly on: Day;
}

export interface ReleaseForecast {
  /** In the order of `RELEASE_CHANCES`; undefined with its reason where it lies beyond `MOST_SPRINTS`. */
  readonly dates: readonly (ReleaseDate | UndefinedValue)[];
  /** The chance to be finished by the end of sprint 0, 1, 2 … */
  readonly chanceBySprint: readonly number[];
  /** How many sprints it is made from. */
  readonly sprintsUsed: number;
  readonly meanVelocityPoints: number;
}

/** Of the optimistic, the likely and the pessimistic date. */
export const RELEASE_CHANCES = [0.15, 0.5, 0.85] as const;
export const LEAST_SPRINTS_TO_FORECAST = 3;
/** A team of long ago is another team. On real sprints a longer memory was no better (docs/forecasts.md). */
export const LATEST_SPRINTS = 5;
/** Five years of two-week sprints: a date beyond is none. */
export const MOST_SPRINTS = 130;
/**
 * By how much the pace of the coming sprints, all in all, wanders away from that of the latest: the standard
 * deviation of its logarithm, on real sprints of three projects (docs/forecasts.md). At 0.5, two times in three the
 * coming pace is between 61% and 165% of the latest.
 */
export const PACE_WANDERS = 0.5;

/**
 * The dates by which the work is finished with a chance of 15, 50 and 85%.
 *
 * Formula: `chancesToFinish` over the latest five velocities, each equally likely; pace deviation
 * σ² = 0.5² + s² ÷ (n·m²), with m and s² mean and variance (n − 1) of those n velocities: how far the pace wanders
 * and how poorly a few sprints show it. Between the ends of two sprints the chance rises by a straight line.
 * Units: sprints and calendar days. Undefined below three closed sprints, when none of the latest finished anything,
 * without backlog, and for a date beyond 130 sprints.
 * How it misleads: it assumes that everything the sprints finished is work on this backlog; a team that also fixes
 * and supports other things must take that out of the velocities. The wandering of the pace is that of other
 * teams, since ten sprints of a team's own can't show it.
 *
 * @example releaseForecast({ backlogPoints: 9, scopeGrowthPoints: 0, velocities: [3, 4], startsOn: '2026-11-02', sprintLengthDays: 14 }).undefined.code === 'few-sprints'
 * @throws RangeError for a negative backlog or growth, or a sprint without days.
 */
export function releaseForecast(question: ReleaseQuestion): ReleaseForecast | UndefinedValue {
  const { backlogPoints, scopeGrowthPoints, velocities, sprintLengthDays } = question;
  if (!(backlogPoints >= 0 && scopeGrowthPoints >= 0)) throw new RangeError('Points of work are 0 or more.');
  if (!(sprintLengthDays >= 1)) throw new RangeError('A sprint has a day at least.');
  if (backlogPoints === 0) return undefinedBecause('no-backlog');
  if (velocities.length < LEAST_SPRINTS_TO_FORECAST) {
    return undefinedBecause('few-sprints', {
      needed: LEAST_SPRINTS_TO_FORECAST,
      known: velocities.length,
      having: 'closed',
    });
  }
  const latest = velocities.slice(-LATEST_SPRINTS);
  const velocity = weightedPoints(
    latest,
    latest.map(() => 1),
  );
  const mean = velocity.meanPoints;
  if (mean === 0) return undefinedBecause('no-velocity', { sprints: latest.length });

  const chanceBySprint = chancesToFinish(
    { backlogPoints, scopeGrowthPoints, velocity, paceDeviation: paceDeviation(latest, mean) },
    { enough: RELEASE_CHANCES[RELEASE_CHANCES.length - 1] as number, most: MOST_SPRINTS },
  );
  return {
    dates: RELEASE_CHANCES.map((chance) => dateOf(chance, chanceBySprint, question)),
    chanceBySprint,
    sprintsUsed: latest.length,
    meanVelocityPoints: mean,
  };
}

function paceDeviation(velocities: readonly number[], mean: number): number {
  const n = velocities.length;
  const variance = velocities.reduce((sum, velocity) => sum + (velocity - mean) ** 2, 0) / (n - 1);
  return Math.sqrt(PACE_WANDERS ** 2 + variance / (n * mean ** 2));
}

function dateOf(
  chance: number,
  chanceBySprint: readonly number[],
  { startsOn, sprintLengthDays }: ReleaseQuestion,
): ReleaseDate | UndefinedValue {
  const sprint = chanceBySprint.findIndex((reached) => reached >= chance);
  if (sprint < 0) {
    return undefinedBecause('too-far-off', { sprints: MOST_SPRINTS, chance });
  }
  const before = chanceBySprint[sprint - 1] as number;
  const after = chanceBySprint[sprint] as number;
  const sprints = sprint - 1 + (chance - before) / (after - before);
  return { chance, sprints, on: dayPlus(startsOn, Math.max(1, Math.ceil(sprints * sprintLengthDays)) - 1) };
}

/** In the order of `RELEASE_CHANCES`. */
const DATE_NAMES = ['optimistic', 'likely', 'pessimistic'] as const;

export interface NamedDate {
  readonly name: (typeof DATE_NAMES)[number];
  readonly chance: number;
  readonly date: ReleaseDate | UndefinedValue;
}

export function namedDates({ dates }: ReleaseForecast): NamedDate[] {
  return DATE_NAMES.flatMap((name, place): NamedDate[] => {
    const [date, chance] = [dates[place], RELEASE_CHANCES[place]];
    return date === undefined || chance === undefined ? [] : [{ name, chance, date }];
  });
}

type SprintRhythm = Pick<ReleaseQuestion, 'startsOn' | 'sprintLengthDays'>;

/** The last day before the next sprint starts. @param sprint from 1 */
export function sprintEnd({ startsOn, sprintLengthDays }: SprintRhythm, sprint: number): Day {
  return dayPlus(startsOn, sprint * sprintLengthDays - 1);
}

/** The sprint that holds the day, from 1, and its end. */
export function holdingSprint(date: ReleaseDate, rhythm: SprintRhythm) {
  const sprint = Math.max(1, Math.ceil(date.sprints));
  return { sprint, endsOn: sprintEnd(rhythm, sprint) };
}
