/**
 * How well the projection would have done on past sprints: walks forward in file order, and no prediction sees
 * anything but sprints that had ended. What it scores is the function behind the bot's status.
 */
import { crps } from '../../src/forecast/crps.ts';
import type { Interval } from '../../src/forecast/interval.ts';
import type { ProjectionHistory } from '../../src/forecast/project-velocity.ts';
import { NO_HISTORY, projectVelocity, withEndedSprints } from '../../src/forecast/project-velocity.ts';
import { median } from '../../src/forecast/quantile.ts';
import type { SprintMoment } from '../open-data/read-open-data.ts';
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
  let history: ProjectionHistory = NO_HISTORY;
  for (const together of sharedSprints(rows)) {
    for (const row of together) {
      if (differences.length >= sprintsToLearn(rows.length)) scored.push(scoreOf(row, history, differences));
      differences.push(row.deliveredPoints - committedPoints(row));
    }
    history = withEndedSprints(history, together.map(endedSprintOf));
  }
  return scored;
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
