/** When a body of work is finished: the team's past, its coming calendar, and how earlier forecasts came out. */
import {
  type GradedRelease,
  gradedReleases,
  inOrderOfChance,
  MOST_SPRINTS_GRADED,
} from '../../forecast/graded-releases.ts';
import { measuredGrowth } from '../../forecast/measured-growth.ts';
import { releaseByDay } from '../../forecast/release-by-day.ts';
import { type ReleaseQuestion, releaseForecast } from '../../forecast/release-forecast.ts';
import { pacedSprints, usualMembers } from '../../forecast/sprint-times.ts';
import { type PacedSprint, teamPace } from '../../forecast/team-pace.ts';
import { type Day, dayPlus } from '../../sprint/calendar.ts';
import { memberDaysOf } from '../../sprint/work-calendar.ts';
import { sprintDays } from '../clock/sprint-clock.ts';
import type { PastSprint, PastTime } from '../history/past-sprint.ts';
import { marginOfPast, oncePerPast } from '../history/team-history.ts';
import { Memory } from '../memory.ts';
import { nextSprintDays, RHYTHM_SPRINTS, sprintRhythmDays } from '../planning/sprint-rhythm.ts';
import type { Reading } from '../ports/store.ts';
import { activeMembers, type Member, type Sprint, type Team } from '../team/team.ts';
import { waitForAll } from '../wait-for-all.ts';
import type { ForecastAdvice, ScopeGrowth } from './advice.ts';

/** Days off are rarely known for longer. */
const DAYS_KNOWN_AHEAD = 366;

/** How large a body of work is, and what was said of its growth. */
type AskedWork = Pick<ForecastAdvice['question'], 'growthPoints' | 'growthMostPoints'> & {
  readonly backlogPoints: number;
};

/** What a forecast is made from beside the team's own past. */
export interface ForecastGround {
  readonly team: Team;
  readonly members: readonly Member[];
  /** The first day of the first sprint that can work on it, and the days from sprint to sprint. */
  readonly startsOn: Day;
  readonly sprintLengthDays: number;
  /** What is learnt from sprints of the other teams of the workspace. */
  readonly lent: readonly GradedRelease[];
}

/** The days of the next sprint, as far as one can tell. */
export async function nextSprint(
  read: Reading,
  team: Team,
  on: Day,
  firstDay?: Day,
): Promise<Pick<Sprint, 'startsOn' | 'endsOn'>> {
  const taken = {
    open: await read.openSprintsOf(team.id),
    lastFinished: await read.latestFinishedSprint(team.id),
  };
  return nextSprintDays(team, taken, on, firstDay);
}

/** @param startsOn the first day of the next sprint */
export async function forecastGround(
  read: Reading,
  team: Team,
  members: readonly Member[],
  startsOn: Day,
): Promise<ForecastGround> {
  const [sprints, version] = await waitForAll([
    read.latestSpans(team.id, RHYTHM_SPRINTS),
    read.pastVersion(team.workspaceId),
  ]);
  const lent = await lentReleases.get(version && JSON.stringify([version, team.id]), async () =>
    lentBy(await read.pastTimesOfOthers(team, MOST_SPRINTS_GRADED.others)),
  );
  return { team, members, startsOn, sprintLengthDays: sprintRhythmDays(sprints), lent };
}

/** In memory, some ten megabytes. */
const MOST_LENT = 100_000;
const lentReleases = new Memory<readonly GradedRelease[]>(MOST_LENT, ({ length }) => 1 + length);

/** What is learnt from how forecasts of other teams would have come out. */
export function lentBy(others: readonly PastTime[]): GradedRelease[] {
  return [...Map.groupBy(others, ({ teamId }) => teamId)].flatMap(([id, its]) =>
    gradedReleases(id, pacedSprints(its, usualMembers(its, 1))),
  );
}

/** What all forecasts of a team have in common. */
export interface TeamForecasts {
  readonly past: readonly PastSprint[];
  readonly ground: ForecastGround;
  readonly sprints: readonly PacedSprint[];
  /** Working time of the coming sprints. */
  readonly times: readonly number[];
  readonly graded: NonNullable<ReleaseQuestion['graded']>;
}

/** @param past oldest first */
export function teamForecasts(past: readonly PastSprint[], ground: ForecastGround): TeamForecasts {
  const { usual, sprints, graded } = pacedPast(past).beside(ground);
  return { past, ground, sprints, times: comingTimes(ground, usual), graded };
}

/** The latest is kept: it changes with how many members there are, and with what others lend. */
const pacedPast = oncePerPast((past) => {
  const paced = ({ team, lent }: ForecastGround, members: number) => {
    const usual = usualMembers(past, Math.max(1, members));
    const sprints = pacedSprints(past, usual);
    const own = gradedReleases(team.id, sprints.slice(-MOST_SPRINTS_GRADED.own));
    const graded = { team: team.id, releases: inOrderOfChance([...own, ...lent]) };
    return { members, lent, usual, sprints, graded };
  };
  let known: ReturnType<typeof paced> | undefined;
  return {
    beside(ground: ForecastGround) {
      const members = activeMembers(ground.members).length;
      if (known?.members !== members || known.lent !== ground.lent) known = paced(ground, members);
      return known;
    },
  };
});

/** What the forecast of one body of work is asked with, and how its growth is known. */
interface WorkQuestion {
  readonly asked: ReleaseQuestion;
  readonly growth: ScopeGrowth;
}

/** @param sharePercent how much of the coming sprints goes to it */
export function workQuestion(
  { past, ground, sprints, times: allTimes, graded }: TeamForecasts,
  work: AskedWork,
  sharePercent = 100,
): WorkQuestion {
  const { startsOn, sprintLengthDays } = ground;
  const times = allTimes.map((time) => (time * sharePercent) / 100);
  const usualTime = times.reduce((sum, time) => sum + time, 0) / times.length;
  const pacePoints = (teamPace(sprints)?.pointsPerTime ?? 0) * usualTime;
  const { deviation, ...growth } = growthOf(work, past, pacePoints);
  const asked = {
    backlogPoints: work.backlogPoints,
    scopeGrowthPoints: growth.points,
    scopeGrowthDeviation: deviation,
    sprints,
    startsOn,
    sprintLengthDays,
    comingTimes: times,
    graded,
  };
  return { asked, growth };
}

/**
 * When a body of work is finished, and how far off the team's numbers were so far.
 *
 * @param past oldest first
 */
export function forecastOf(
  question: ForecastAdvice['question'],
  past: readonly PastSprint[],
  ground: ForecastGround,
): Pick<ForecastAdvice, 'startsOn' | 'sprintLengthDays' | 'forecast' | 'growth' | 'byDay' | 'margin'> {
  const { backlogPoints, byDay, sharePercent } = question;
  const { startsOn, sprintLengthDays } = ground;
  const work = { ...question, backlogPoints: backlogPoints ?? 0 };
  const { asked, growth } = workQuestion(teamForecasts(past, ground), work, sharePercent);
  const onDay = byDay === undefined ? undefined : releaseByDay({ ...asked, backlogPoints }, byDay);
  const isUnknown = onDay !== undefined && 'undefined' in onDay;
  const throughSprint = onDay === undefined || isUnknown ? 0 : Math.ceil(onDay.sprints);
  return {
    startsOn,
    sprintLengthDays,
    growth,
    // Where no work was named, what is missing is missing for the amounts.
    forecast: backlogPoints === undefined && isUnknown ? onDay : releaseForecast({ ...asked, throughSprint }),
    byDay: onDay,
    margin: marginOfPast(past),
  };
}

/** So many deviations on either side of the mean hold 8 of 10 cases of a normal distribution. */
const DEVIATIONS_OF_8_IN_10 = 1.2815515655446004;

/** A narrower span isn't worth a sentence. */
const LEAST_REACH_POINTS = 0.05;

/** @param pacePoints what a coming sprint finishes, on average */
function growthOf(
  { growthPoints, growthMostPoints }: AskedWork,
  past: readonly PastSprint[],
  pacePoints: number,
): ScopeGrowth & { readonly deviation: number } {
  if (growthPoints !== undefined) {
    const most = growthMostPoints ?? growthPoints;
    return {
      points: (growthPoints + most) / 2,
      deviation: (most - growthPoints) / 2 / DEVIATIONS_OF_8_IN_10,
      span: most > growthPoints ? { low: growthPoints, high: most } : undefined,
      measuredSprints: undefined,
    };
  }
  const measured = measuredGrowth(past);
  if ('undefined' in measured) return { points: 0, deviation: 0, span: undefined, measuredSprints: 0 };
  const [points, deviation] = [measured.share * pacePoints, measured.deviation * pacePoints];
  const reach = DEVIATIONS_OF_8_IN_10 * deviation;
  return {
    points,
    deviation,
    span:
      reach >= LEAST_REACH_POINTS ? { low: Math.max(0, points - reach), high: points + reach } : undefined,
    measuredSprints: measured.sprints,
  };
}

/** Member-days of the coming sprints, as far ahead as days off are known; those of the usual team where it has nobody. */
function comingTimes({ team, members, startsOn, sprintLengthDays }: ForecastGround, usual: number): number[] {
  const people = activeMembers(members);
  const sprints = Math.max(1, Math.floor(DAYS_KNOWN_AHEAD / sprintLengthDays));
  return Array.from({ length: sprints }, (_, i) => {
    const from = dayPlus(startsOn, i * sprintLengthDays);
    const days = sprintDays(team, { startsOn: from, endsOn: dayPlus(from, sprintLengthDays - 1) });
    return people.length === 0 ? days.length * usual : memberDaysOf(team, people, days);
  });
}
