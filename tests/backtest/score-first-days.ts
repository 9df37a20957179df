/**
 * What the status tells in a sprint's first days, when the planning still speaks: how far it lies from the chance to keep that
 * was told at planning, and whether it comes true more often than what the projection tells alone.
 */
import { commitmentModel } from '../../src/forecast/commitment-model.ts';
import { commitmentChances } from '../../src/forecast/commitment-range.ts';
import { chanceOfAtLeast } from '../../src/forecast/load-signal.ts';
import { laterPace, pacedVelocity, paceShare } from '../../src/forecast/paced-velocity.ts';
import { type Amount, plannedAndProjected, planShare } from '../../src/forecast/planned-and-projected.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { committedPoints, pacedSprintOf } from './moments.ts';
import { keyOf, NO_TIME, plannedSprints } from './planned-sprints.ts';
import { type Foretold, meanOf } from './walk-forward.ts';

/** What was known when a sprint was planned. */
export interface Planned {
  /** How much the team was taken to finish of its commitment. */
  readonly amount: Amount;
  /** The chance to keep that was told. */
  readonly kept: number;
}

/** The planning of a sprint, where one could be told anything. */
export type PlanningOf = (row: SprintMoment) => Planned | undefined;

/** One moment of one file; shares of 1. */
export interface FirstDaysScore {
  readonly elapsedPercent: number;
  /** Sprints that had been told a chance at planning, and have not reached their floor yet. */
  readonly cases: number;
  /** Mean distance of the status from what was told at planning … */
  readonly apart: number;
  /** … and of the projection alone. */
  readonly projectionApart: number;
  readonly brier: number;
  readonly projectionBrier: number;
}

export function planningOf(rows: readonly SprintMoment[]): PlanningOf {
  const finishedOf = (row: SprintMoment) => Math.min(row.deliveredPoints, committedPoints(row));
  const planned = new Map(
    plannedSprints(rows, finishedOf).flatMap(({ row, before }): [string, Planned][] => {
      const model = commitmentModel(before, NO_TIME);
      if ('undefined' in model || 'undefined' in model.finishes) return [];
      const points = committedPoints(row);
      const { kept } = commitmentChances(model, points, DEFAULT_THRESHOLDS);
      return typeof kept === 'number'
        ? [[keyOf(row), { amount: model.finishes.amountOf(points), kept }]]
        : [];
    }),
  );
  return (row) => planned.get(keyOf(row));
}

/** Of the points delivered, as the bot's status sees them at that moment. */
export function statusAmount({ row, projection, later }: Foretold, planning: PlanningOf): Amount {
  const now = pacedSprintOf(row);
  const planned = planning(row)?.amount;
  const share = paceShare(planned ? planShare(row.elapsedPercent / 100) : 0);
  const paced = pacedVelocity(projection.distribution, now, laterPace(later), share);
  return plannedAndProjected(paced, planned, {
    finishedPoints: row.donePoints,
    elapsedShare: row.elapsedPercent / 100,
  });
}

/** Undefined where the planning is silent. */
export function scoreFirstDays(
  foretold: readonly Foretold[],
  planning: PlanningOf,
): FirstDaysScore | undefined {
  const elapsedPercent = foretold[0]?.row.elapsedPercent ?? 100;
  const cases = foretold.flatMap((one) => {
    const planned = planning(one.row);
    const floorPoints = DEFAULT_THRESHOLDS.keptShareAtLeast * committedPoints(one.row);
    if (!planned || one.row.donePoints >= floorPoints) return [];
    return [
      {
        planned: planned.kept,
        told: chanceOfAtLeast(statusAmount(one, planning), floorPoints),
        projected: chanceOfAtLeast(one.projection.distribution, floorPoints),
        came: one.row.deliveredPoints >= floorPoints ? 1 : 0,
      },
    ];
  });
  if (planShare(elapsedPercent / 100) === 0 || cases.length === 0) return undefined;
  return {
    elapsedPercent,
    cases: cases.length,
    apart: meanOf(cases, ({ told, planned }) => Math.abs(told - planned)),
    projectionApart: meanOf(cases, ({ projected, planned }) => Math.abs(projected - planned)),
    brier: meanOf(cases, ({ told, came }) => (told - came) ** 2),
    projectionBrier: meanOf(cases, ({ projected, came }) => (projected - came) ** 2),
  };
}
