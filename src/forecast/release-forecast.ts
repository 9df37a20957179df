/**
 * When a larger body of work will be finished, as three dates: from the team's own pace, on the working time of its
 * coming sprints, and from how earlier forecasts came out.
 */
import { type Day, dayPlus } from '../sprint/calendar.ts';
import { type UndefinedValue, undefinedBecause } from '../sprint/undefined-value.ts';
import {
  AS_TOLD,
  type GradedRelease,
  sprintWorthPoints,
  type ToldChances,
  toldChances,
} from './graded-releases.ts';
import { pointsNeeded, type QueuedWork } from './queued-work.ts';
import {
  chanceFinished,
  LATEST_SPRINTS,
  LEAST_SPRINTS_FOR_PACE,
  type PacedSprint,
  type TeamPace,
  teamPace,
} from './team-pace.ts';

export interface ReleaseQuestion {
  readonly backlogPoints: number;
  /** Points by which the backlog grows with each sprint; 0 for a body of work that is settled. */
  readonly scopeGrowthPoints: number;
  /** How unsure this growth is: its standard deviation; undefined: not at all. */
  readonly scopeGrowthDeviation?: number | undefined;
  /** Whether it grows only while it is worked on, not while it waits for what comes before it. */
  readonly growsInTurnOnly?: boolean;
  /** Work that is done before it, in turn, each with how unsure its growth is. */
  readonly ahead?: readonly WorkAhead[];
  /** The team's closed sprints, oldest first. */
  readonly sprints: readonly PacedSprint[];
  /** The first day of the first sprint that will work on it. */
  readonly startsOn: Day;
  /** Calendar days from the start of a sprint to the start of the next. */
  readonly sprintLengthDays: number;
  /** The team's working time in the first coming sprints, in the unit of the past; later ones hold their mean. */
  readonly comingTimes: readonly number[];
  /** Chances are wanted up to the end of this sprint at least. */
  readonly throughSprint?: number;
  /** How earlier forecasts came out, those of the team itself under this name. */
  readonly graded?: { readonly team: string; readonly releases: readonly GradedRelease[] };
}

export interface WorkAhead extends QueuedWork {
  /** Standard deviation of its growth. */
  readonly growthDeviation: number;
}

export interface ReleaseDate {
  /** The chance that the work is finished by then. */
  readonly chance: number;
  /** Sprints it takes; a part of a sprint counts as that part of its days. */
  readonly sprints: number;
  /** The day of it; the work is in hand at the end of the sprint that holds this day. */
  readonly on: Day;
}

/** What a forecast is made from. */
export interface ForecastBasis {
  /** How many sprints it is made from. */
  readonly sprintsUsed: number;
  /** What the team's pace comes to in the first coming sprint. */
  readonly pointsPerSprint: number;
  /** Earlier forecasts of the team's own whose end is known. */
  readonly gradedForecasts: number;
}

export interface ReleaseForecast extends ForecastBasis {
  /** In the order of `RELEASE_CHANCES`; undefined with its reason where it lies beyond `MOST_SPRINTS`. */
  readonly dates: readonly (ReleaseDate | UndefinedValue)[];
  /** The chance to be finished by the end of sprint 0, 1, 2 … */
  readonly chanceBySprint: readonly number[];
}

/** Of the optimistic, the likely and the pessimistic date. */
export const RELEASE_CHANCES = [0.15, 0.5, 0.85] as const;
/** Five years of two-week sprints: a date beyond is none. */
export const MOST_SPRINTS = 130;

/**
 * The dates by which the work is finished with a chance of 15, 50 and 85%.
 *
 * Formula: P(T ≤ k) = G(max over j ≤ k of C(B + j·g, t₁ + … + tⱼ)) with B the backlog, g its growth a sprint, t the
 * working time of the coming sprints, C the chance by the team's pace (`chanceFinished`), and G how often such
 * chances came true so far (`toldChances`). Where g is unsure, C is its mean over a normal distribution of g that
 * ends at 0, by five places. Between the ends of two sprints C rises by a straight line. Where other work comes first,
 * B + j·g is what must be finished of all of it (`pointsNeeded`), and growths that are unsure are high or low together.
 * Units: sprints and calendar days. Undefined below three closed sprints, when none of the latest finished anything,
 * without backlog or coming working time, and for a date beyond 130 sprints.
 * How it misleads: it assumes that everything the sprints finished is work on this backlog; a team that also fixes
 * and supports other things must take that out of the velocities. Where scope grows, the chance at a sprint is the
 * best so far instead of that of stopping at the first moment of completion: a little less than the truth.
 *
 * @example releaseForecast({ backlogPoints: 9, scopeGrowthPoints: 0, sprints: [], startsOn: '2026-11-02', sprintLengthDays: 14, comingTimes: [1] }).undefined.code === 'few-sprints'
 * @throws RangeError for a negative backlog or growth, or a sprint without days.
 */
export function releaseForecast(question: ReleaseQuestion): ReleaseForecast | UndefinedValue {
  const { backlogPoints, scopeGrowthPoints, sprints, sprintLengthDays } = question;
  if (!(backlogPoints >= 0 && scopeGrowthPoints >= 0)) throw new RangeError('Points of work are 0 or more.');
  if (!(sprintLengthDays >= 1)) throw new RangeError('A sprint has a day at least.');
  if (backlogPoints === 0) return undefinedBecause('no-backlog');
  const pace = knownPace(sprints);
  if ('undefined' in pace) return pace;
  const told = toldOf(question, pointsInTurn(question) / sprintWorthPoints(sprints));
  const { throughSprint = 0 } = question;
  const enough = Math.max(...RELEASE_CHANCES.map((chance) => told.toldFor(chance)));
  const byPace = chancesByPace(question, pace, { chance: enough, sprint: throughSprint });
  const dates = RELEASE_CHANCES.map((chance) => dateOf(chance, told.toldFor(chance), byPace, question));
  const chances = byPace.map((chance, sprint) => (sprint === 0 ? 0 : told.cameTrue(chance)));
  const last = dates.at(-1) as ReleaseDate | UndefinedValue;
  return {
    dates,
    chanceBySprint:
      'undefined' in last ? chances : chances.slice(0, Math.max(Math.ceil(last.sprints), throughSprint) + 1),
    ...basisOf(question, pace),
  };
}

/** Undefined below three closed sprints, and when none of the latest finished anything. */
export function knownPace(sprints: readonly PacedSprint[]): TeamPace | UndefinedValue {
  if (sprints.length < LEAST_SPRINTS_FOR_PACE) {
    return undefinedBecause('few-sprints', {
      needed: LEAST_SPRINTS_FOR_PACE,
      known: sprints.length,
      having: 'closed',
    });
  }
  return (
    teamPace(sprints) ??
    undefinedBecause('no-velocity', { sprints: Math.min(sprints.length, LATEST_SPRINTS) })
  );
}

export function basisOf(
  { sprints, comingTimes, graded }: Pick<ReleaseQuestion, 'sprints' | 'comingTimes' | 'graded'>,
  pace: TeamPace,
): ForecastBasis {
  return {
    sprintsUsed: Math.min(sprints.length, LATEST_SPRINTS),
    pointsPerSprint: pace.pointsPerTime * (comingTimes[0] ?? 0),
    gradedForecasts:
      graded?.releases.filter(({ team, isFinished }) => isFinished && team === graded.team).length ?? 0,
  };
}

/** Of the work, and of what comes before it. */
function pointsInTurn({ backlogPoints, ahead = [] }: ReleaseQuestion): number {
  return ahead.reduce((sum, { points }) => sum + points, backlogPoints);
}

/** What is made of the chances of work of that size; where the latest sprints finished nothing, of a large one. */
export function toldOf({ graded }: Pick<ReleaseQuestion, 'graded'>, sprintsWorth: number): ToldChances {
  return graded ? toldChances(graded.releases, graded.team, sprintsWorth) : AS_TOLD;
}

/** Five places in deviations, and their weights, that stand for a normal distribution (Gauss and Hermite). */
const NORMAL_PLACES = [
  [-2.8569700138728056, 0.011257411327720689],
  [-1.355626179974266, 0.22207592200561266],
  [0, 0.5333333333333333],
  [1.355626179974266, 0.22207592200561266],
  [2.8569700138728056, 0.011257411327720689],
] as const;

/**
 * By the end of sprint 0, 1, 2 …, before it is asked how such chances came out. Stops once a chance is enough and the
 * sprint is reached: of ten bodies of work that wait for each other, all 130 sprints take many times as long.
 */
export function chancesByPace(
  question: ReleaseQuestion,
  pace: TeamPace,
  until: { readonly chance: number; readonly sprint: number },
): number[] {
  const { backlogPoints: points, scopeGrowthPoints: growthPoints, growsInTurnOnly = false } = question;
  const { ahead = [], scopeGrowthDeviation: growthDeviation = 0, comingTimes } = question;
  const works = [...ahead, { points, growthPoints, growthDeviation, growsWaiting: !growsInTurnOnly }];
  const places = works.every((work) => work.growthDeviation === 0) ? ([[0, 1]] as const) : NORMAL_PLACES;
  const grown = places.map(([place, weight]) => ({ weight, works: grownBy(works, place), reached: 0 }));
  const meanTime = comingTimes.reduce((sum, time) => sum + time, 0) / comingTimes.length;
  const chances = [0];
  let time = 0;
  for (let sprint = 1; sprint <= MOST_SPRINTS; sprint += 1) {
    time += comingTimes[sprint - 1] ?? meanTime;
    let chance = 0;
    for (const one of grown) {
      one.reached = Math.max(one.reached, chanceFinished(pace, pointsNeeded(one.works, sprint), time));
      chance += one.weight * one.reached;
    }
    chances.push(chance);
    if (sprint >= until.sprint && chance >= until.chance) break;
  }
  return chances;
}

/** The works if their growth is so many deviations from what is expected. */
function grownBy(works: readonly WorkAhead[], place: number): QueuedWork[] {
  return works.map((work) => ({
    ...work,
    growthPoints: Math.max(0, work.growthPoints + place * work.growthDeviation),
  }));
}

function dateOf(
  chance: number,
  byPace: number,
  reached: readonly number[],
  { startsOn, sprintLengthDays }: ReleaseQuestion,
): ReleaseDate | UndefinedValue {
  const sprint = reached.findIndex((chance) => chance > 0 && chance >= byPace);
  if (sprint < 0) return undefinedBecause('too-far-off', { sprints: MOST_SPRINTS, chance });
  const before = reached[sprint - 1] as number;
  const after = reached[sprint] as number;
  const sprints = sprint - 1 + Math.max(0, byPace - before) / (after - before);
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
