/** What will be finished by a day: the chance of a body of work, and how much work can be counted on. */
import { type Day, daysBetween } from '../sprint/calendar.ts';
import { type UndefinedValue, undefinedBecause } from '../sprint/undefined-value.ts';
import { sprintWorthPoints, type ToldChances } from './graded-releases.ts';
import {
  basisOf,
  chancesByPace,
  type ForecastBasis,
  knownPace,
  MOST_SPRINTS,
  type ReleaseQuestion,
  toldOf,
} from './release-forecast.ts';
import type { TeamPace } from './team-pace.ts';

export interface ReleaseByDay extends ForecastBasis {
  readonly on: Day;
  /** Sprints until the end of the day; a part of a sprint counts as that part of its days. */
  readonly sprints: number;
  /** That all of the work is finished by then; undefined where nobody said how much it is. */
  readonly chance: number | undefined;
  /** Of `COUNTED_ON`, in its order. */
  readonly amounts: readonly AmountByDay[];
}

export interface AmountByDay {
  readonly chance: number;
  /** At least so much is finished with this chance, in whole points. */
  readonly points: number;
}

/** With an amount of work, or without one. */
type QuestionByDay = Omit<ReleaseQuestion, 'backlogPoints'> & { readonly backlogPoints?: number | undefined };

/** What can be counted on, and what is as likely as not. */
export const COUNTED_ON = [0.85, 0.5] as const;
/** Nobody asks about more. */
const MOST_POINTS = 1_000_000;

/**
 * The chance that the work is finished by the end of a day, and how many points are, with a chance of 85 and 50%.
 *
 * Formula: that of `releaseForecast` at the sprints that the day makes, on the straight line between the ends of two
 * sprints. The amount with the chance p is the largest B with G(C(B)) ≥ p, where G is taken for work of as many sprints'
 * worth as there are sprints until the day.
 * Units: chances from 0 to 1, whole points. Undefined where `releaseForecast` is; a day beyond 130 sprints counts as the
 * end of the last of them, and one before the first sprint has a chance of 0. Without an amount of work there is no chance,
 * and the amounts are the same.
 * How it misleads: as `releaseForecast`. With growing scope the amounts are of the work that is there today.
 *
 * @example releaseByDay({ backlogPoints: 9, scopeGrowthPoints: 0, sprints: [], startsOn: '2026-11-02', sprintLengthDays: 14, comingTimes: [1] }, '2026-11-30').undefined.code === 'few-sprints'
 */
export function releaseByDay(question: QuestionByDay, on: Day): ReleaseByDay | UndefinedValue {
  const { sprints, backlogPoints, startsOn, sprintLengthDays } = question;
  if (backlogPoints === 0) return undefinedBecause('no-backlog');
  const pace = knownPace(sprints);
  if ('undefined' in pace) return pace;
  const days = Math.max(0, daysBetween(startsOn, on) + 1);
  const until = Math.min(MOST_SPRINTS, days / sprintLengthDays);
  return {
    on,
    sprints: until,
    chance: backlogPoints === undefined ? undefined : chanceBy({ ...question, backlogPoints }, pace, until),
    amounts: amountsBy(question, pace, until),
    ...basisOf(question, pace),
  };
}

function chanceBy(question: ReleaseQuestion, pace: TeamPace, sprints: number): number {
  if (sprints === 0) return 0;
  const told = toldOf(question, question.backlogPoints / sprintWorthPoints(question.sprints));
  return told.cameTrue(chanceAt(question, pace, sprints));
}

function chanceAt(question: ReleaseQuestion, pace: TeamPace, sprints: number): number {
  const whole = Math.floor(sprints);
  const chances = chancesByPace(question, pace, { chance: 0, sprint: whole + 1 });
  const [before, after] = [chances[whole] as number, chances[whole + 1] ?? (chances[whole] as number)];
  return before + (sprints - whole) * (after - before);
}

function amountsBy(question: QuestionByDay, pace: TeamPace, sprints: number): AmountByDay[] {
  const told: ToldChances = toldOf(question, sprints);
  return COUNTED_ON.map((chance) => {
    const needed = told.toldFor(chance);
    let [low, high] = [0, MOST_POINTS];
    while (high - low > 1) {
      const points = (low + high) >> 1;
      const reached =
        sprints > 0 && chanceAt({ ...question, backlogPoints: points }, pace, sprints) >= needed;
      [low, high] = reached ? [points, high] : [low, points];
    }
    return { chance, points: low };
  });
}
