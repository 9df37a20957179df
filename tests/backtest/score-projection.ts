/** How well the projection would have done on past sprints. */

import { crps } from '../../src/forecast/crps.ts';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { MOMENTS_PERCENT, rowsAt, withCards } from './moments.ts';
import { coverageOf, type Foretold, meanError, meanOf, walkForward } from './walk-forward.ts';

/**
 * `all` rows of a file, or those of sprints that hold cards at the moment, before and after as well, as if there were
 * no others: the bot neither projects a sprint without cards nor learns from it.
 */
export type SprintSet = 'all' | 'with-cards';

/** One moment of one file. Errors, widths and CRPS in points, the rest as shares of 1. */
export interface ProjectionScore {
  readonly set: SprintSet;
  readonly elapsedPercent: number;
  readonly scored: number;
  readonly meanAbsoluteError: number;
  /** Mean absolute error ÷ that of the running median of delivered − committed. */
  readonly errorShare: number;
  /** Mean absolute error ÷ that of the team's usual finish share (`finish-share-rule.ts`). */
  readonly errorShareOfFinishShare: number;
  readonly coverage50: number;
  readonly coverage80: number;
  readonly width50: number;
  readonly width80: number;
  readonly crps: number;
}

/** What was foretold of one set of a file's sprints at one moment. */
export interface ForetoldMoment {
  readonly set: SprintSet;
  readonly elapsedPercent: number;
  readonly cases: readonly Foretold[];
}

/** How many sprints at the beginning of a file only teach. */
export function sprintsToLearn(sprints: number): number {
  return Math.max(40, Math.floor(sprints / 5));
}

/** Every moment that has sprints beyond those that only teach. */
export function foretellMoments(rows: readonly SprintMoment[]): ForetoldMoment[] {
  return (['all', 'with-cards'] as const)
    .flatMap((set) =>
      MOMENTS_PERCENT.map((elapsedPercent) => {
        const there = rowsAt(rows, elapsedPercent).filter((row) => set === 'all' || withCards(row));
        return { set, elapsedPercent, cases: walkForward(there, sprintsToLearn(there.length)) };
      }),
    )
    .filter(({ cases }) => cases.length > 0);
}

export function scoreProjection({ set, elapsedPercent, cases }: ForetoldMoment): ProjectionScore {
  const meanAbsoluteError = meanError(cases, ({ projection }) => projection.medianPoints);
  return {
    set,
    elapsedPercent,
    scored: cases.length,
    meanAbsoluteError,
    errorShare: meanAbsoluteError / meanError(cases, ({ runningMedianPoints }) => runningMedianPoints),
    errorShareOfFinishShare:
      meanAbsoluteError / meanError(cases, ({ finishSharePoints }) => finishSharePoints),
    coverage50: coverageOf(cases, 'narrow'),
    coverage80: coverageOf(cases, 'wide'),
    width50: meanOf(cases, ({ projection: { narrow } }) => narrow.high - narrow.low),
    width80: meanOf(cases, ({ projection: { wide } }) => wide.high - wide.low),
    crps: meanOf(cases, ({ projection, row }) => crps(projection.distribution, row.deliveredPoints)),
  };
}
