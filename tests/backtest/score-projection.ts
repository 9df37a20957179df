/**
 * How well the projection would have done on past sprints: walks forward in file order, and no prediction sees
 * anything but sprints that had ended. What it scores is the function behind the bot's status.
 */

import type { Interval } from '../../src/forecast/points-distribution.ts';
import {
  type EndedSprint,
  MOST_SPRINTS_BACK,
  NO_HISTORY,
  type ProjectionHistory,
  projectVelocity,
  withEndedSprints,
} from '../../src/forecast/project-velocity.ts';
import { median } from '../../src/forecast/quantile.ts';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { crps } from './crps.ts';
import {
  committedPoints,
  endedSprintOf,
  MOMENTS_PERCENT,
  rowsAt,
  sharedSprints,
  soFarOf,
} from './moments.ts';

/** One moment of one file. Errors, widths and CRPS in points, the rest as shares of 1. */
export interface ProjectionScore {
  readonly elapsedPercent: number;
  readonly scored: number;
  readonly meanAbsoluteError: number;
  /** Mean absolute error ÷ that of the running median of delivered − committed. */
  readonly errorShare: number;
  readonly coverage50: number;
  readonly coverage80: number;
  readonly width50: number;
  readonly width80: number;
  readonly crps: number;
}

interface Scored {
  readonly error: number;
  readonly baselineError: number;
  readonly narrow: Interval;
  readonly wide: Interval;
  readonly crps: number;
  readonly delivered: number;
}

/** How many sprints at the beginning of a file only teach. */
export function sprintsToLearn(sprints: number): number {
  return Math.max(40, Math.floor(sprints / 5));
}

/** The scores at every moment that has sprints beyond those that only teach. */
export function scoreProjection(rows: readonly SprintMoment[]): ProjectionScore[] {
  return MOMENTS_PERCENT.flatMap((elapsedPercent) => {
    const scored = walkForward(rowsAt(rows, elapsedPercent));
    return scored.length === 0 ? [] : [{ elapsedPercent, ...summaryOf(scored) }];
  });
}

function walkForward(rows: readonly SprintMoment[]): Scored[] {
  const scored: Scored[] = [];
  const differences: number[] = [];
  const ended: EndedSprint[][] = [];
  for (const together of sharedSprints(rows)) {
    const historyOf = historiesOf(ended);
    for (const row of together) {
      if (differences.length >= sprintsToLearn(rows.length)) {
        scored.push(scoreOf(row, historyOf(String(row.board)), differences));
      }
      differences.push(row.deliveredPoints - committedPoints(row));
    }
    ended.push(together.map(endedSprintOf));
  }
  return scored;
}

/** What the bot would have learnt for each team, from as many of the latest sprints as it looks back at. */
function historiesOf(ended: readonly EndedSprint[][]): (team: string) => ProjectionHistory {
  const made = new Map<string, ProjectionHistory>();
  return (team) => {
    const history = made.get(team) ?? latestSprints(ended, team).reduce(withEndedSprints, NO_HISTORY);
    made.set(team, history);
    return history;
  };
}

/** As the store would give them: so many of the team's own, so many of the others, in order. */
export function latestSprints(ended: readonly EndedSprint[][], team: string): EndedSprint[][] {
  const room = { ...MOST_SPRINTS_BACK };
  const latest: EndedSprint[][] = [];
  for (let i = ended.length - 1; i >= 0 && room.own + room.others > 0; i -= 1) {
    const fits = (ended[i] as EndedSprint[]).filter((sprint) => {
      const whose = sprint.team === team ? 'own' : 'others';
      room[whose] -= 1;
      return room[whose] >= 0;
    });
    room.own = Math.max(0, room.own);
    room.others = Math.max(0, room.others);
    if (fits.length > 0) latest.unshift(fits);
  }
  return latest;
}

function scoreOf(row: SprintMoment, history: ProjectionHistory, differences: readonly number[]): Scored {
  const projection = projectVelocity(history, String(row.board), soFarOf(row));
  const baseline = committedPoints(row) + (median(differences) as number);
  return {
    error: Math.abs(projection.medianPoints - row.deliveredPoints),
    baselineError: Math.abs(baseline - row.deliveredPoints),
    narrow: projection.narrow,
    wide: projection.wide,
    crps: crps(projection.distribution, row.deliveredPoints),
    delivered: row.deliveredPoints,
  };
}

function summaryOf(scored: readonly Scored[]): Omit<ProjectionScore, 'elapsedPercent'> {
  const mean = (value: (each: Scored) => number): number =>
    scored.reduce((sum, each) => sum + value(each), 0) / scored.length;
  const held = (each: Scored, { low, high }: Interval): number =>
    low <= each.delivered && each.delivered <= high ? 1 : 0;
  const meanAbsoluteError = mean(({ error }) => error);
  return {
    scored: scored.length,
    meanAbsoluteError,
    errorShare: meanAbsoluteError / mean(({ baselineError }) => baselineError),
    coverage50: mean((each) => held(each, each.narrow)),
    coverage80: mean((each) => held(each, each.wide)),
    width50: mean(({ narrow }) => narrow.high - narrow.low),
    width80: mean(({ wide }) => wide.high - wide.low),
    crps: mean((each) => each.crps),
  };
}
